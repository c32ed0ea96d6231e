using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>The club's real rules, and talks over them with members who pick at random.</summary>
internal static class Shed
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    public static KnowledgeBase Knowledge { get; } = Load();

    public static Coach Coach { get; } = new(Knowledge, Listener.For(Knowledge), new CoachOptions());

    /// <summary>What the coach says in each turn of one talk. The same seed gives the same talk.</summary>
    public static IEnumerable<IReadOnlyList<Card>> Talk(int seed)
    {
        var chance = new Random(seed);
        var @case = Case.New(new CaseId("k7f3q9"), new MemberId("club/rider"), new BikeId("b1"), "room", Noon);
        var bike = BikeProfile.New(new BikeId("b1"), new MemberId("club/rider"));
        var complaints = Knowledge.Complaints.Values.OrderBy(c => c.Id, StringComparer.Ordinal).ToList();
        Incoming next = new MemberSaid("e0", complaints[chance.Next(complaints.Count)].Called);
        for (var i = 1; i <= 40; i++)
        {
            var turn = Coach.Take(@case, bike, next, Noon.AddMinutes(i));
            (@case, bike) = (turn.Case, turn.Bike);
            yield return turn.Say;
            if (turn.Say.IsEmpty || turn.Say[^1].Options.IsEmpty || @case.IsClosed) yield break;
            next = Answer(turn.Say[^1], chance, i);
        }
    }

    private static Incoming Answer(Card card, Random chance, int turn)
    {
        // Dangers end a talk at once and helps lead nowhere new: each is picked now and then, not as often as an answer.
        var options = card.Options.SelectMany(o => Enumerable.Repeat(o, o.Role == OptionRole.Help || o.Id.Contains("danger", StringComparison.Ordinal) ? 1 : 4)).ToList();
        return options.Count == 0
            ? new MemberSaid($"e{turn}", "it drags")
            : new MemberChose($"e{turn}", options[chance.Next(options.Count)].Id);
    }

    private static KnowledgeBase Load()
    {
        var result = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(AppContext.BaseDirectory, "knowledge")));
        return result.Knowledge ?? throw new InvalidOperationException(string.Join('\n', result.Problems));
    }
}
