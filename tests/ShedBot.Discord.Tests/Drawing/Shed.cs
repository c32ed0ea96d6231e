using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>The club's real rules, and what the coach says from them.</summary>
internal static class Shed
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    public static KnowledgeBase Knowledge { get; } = Load();

    public static Coach Coach { get; } = new(Knowledge, Listener.For(Knowledge), new CoachOptions());

    /// <summary>Every question, check, repair and step that the rules hold, put to a member who has told of one trouble; each with what its help buttons say.</summary>
    public static IEnumerable<IReadOnlyList<Card>> EveryQuestion()
    {
        var asks = Knowledge.Checks.Keys.SelectMany(c => new[] { new Ask(AskKind.Check, c), new Ask(AskKind.Check, c, 1) })
            .Concat(Knowledge.Facts.Keys.Select(f => new Ask(AskKind.Fact, f)))
            .Concat(Knowledge.Repairs.Keys.Select(r => new Ask(AskKind.Repair, r)))
            .Concat(Knowledge.Repairs.Values.SelectMany(r => r.Steps.Select((_, i) => new Ask(AskKind.RepairStep, r.Id, i))))
            .Concat(Knowledge.Repairs.Keys.Select(r => new Ask(AskKind.DidItHold, r)))
            .Concat(Knowledge.Emergencies.Keys.Select(e => new Ask(AskKind.AllSafe, e)))
            .Concat(Knowledge.Eithers.SelectMany(e => new[] { new Ask(AskKind.Either, e.Id), new Ask(AskKind.Either, e.Id, 1) }))
            .Concat([new Ask(AskKind.Trouble), new Ask(AskKind.WhichComplaint), new Ask(AskKind.Ready)]);
        return asks.Select(a => a with { Serial = 17 }).SelectMany(Shown);
    }

    /// <summary>The answer to everything that a member may ask beside the questions.</summary>
    public static IEnumerable<IReadOnlyList<Card>> EveryHowTo() =>
        Knowledge.HowTos.Values.Select(h => (IReadOnlyList<Card>)Coach.Take(New(), Bike, new MemberSaid("e1", h.Called), Noon).Say);

    /// <summary>What the coach says in each turn of one talk with a member who picks at random. The same seed gives the same talk.</summary>
    public static IEnumerable<IReadOnlyList<Card>> Talk(int seed)
    {
        var chance = new Random(seed);
        var (@case, bike) = (New(), Bike);
        var complaints = Knowledge.Complaints.Values.OrderBy(c => c.Id, StringComparer.Ordinal).ToList();
        Incoming next = new MemberSaid("e0", complaints[chance.Next(complaints.Count)].Called);
        for (var i = 1; i <= 40; i++)
        {
            var turn = Coach.Take(@case, bike, next, Noon.AddMinutes(i));
            (@case, bike) = (turn.Case, turn.Bike);
            yield return turn.Say;
            if (turn.Say.IsEmpty || turn.Say[^1].Options.IsEmpty || @case.IsClosed) yield break;
            next = Pick(turn.Say[^1], chance, i);
        }
    }

    private static BikeProfile Bike { get; } = BikeProfile.New(new BikeId("b1"), new MemberId("club/rider"));

    private static Case New() => Case.New(new CaseId("k7f3q9"), new MemberId("club/rider"), new BikeId("b1"), "room", Noon);

    private static IEnumerable<IReadOnlyList<Card>> Shown(Ask ask)
    {
        var trouble = Knowledge.Complaints.Keys.Order(StringComparer.Ordinal).First();
        var @case = New() with
        {
            Open = ask,
            Phase = CasePhase.Asking,
            OpeningWords = "it *drags* <@1> @everyone",
            // What is believed takes long to work out, and only a repair says it.
            Entries = ask.Kind == AskKind.Repair ? [new CaseEntry(1, EntryKind.Complaint, trouble, null, 1, Noon)] : [],
        };
        if (CaseLook.OpenQuestion(Knowledge, new CoachOptions(), @case, Bike, Noon) is not { } card) yield break;
        yield return [card];
        if (card.Options.FirstOrDefault(o => OptionId.Read(o.Id) is { Token: OptionId.ShowMe }) is { } showMe)
            yield return Coach.Take(@case, Bike, new MemberChose("e1", showMe.Id), Noon).Say;
    }

    private static MemberChose Pick(Card card, Random chance, int turn)
    {
        // Dangers end a talk at once and helps lead nowhere new: each is picked now and then, not as often as an answer.
        var options = card.Options.SelectMany(o => Enumerable.Repeat(o, o.Role == OptionRole.Help || o.Id.Contains("danger", StringComparison.Ordinal) ? 1 : 4)).ToList();
        return new MemberChose($"e{turn}", options[chance.Next(options.Count)].Id);
    }

    private static KnowledgeBase Load()
    {
        var result = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(AppContext.BaseDirectory, "knowledge")));
        return result.Knowledge ?? throw new InvalidOperationException(string.Join('\n', result.Problems));
    }
}
