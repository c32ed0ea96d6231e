using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Torture;

/// <summary>
/// What each invented member does at each step, worked out from the step alone: so that the parent knows, without having seen it, what must be in
/// the store when a step was acknowledged. A member has one case after the other, each of <see cref="TurnsOfACase"/> turns, on one bike. Every second
/// member has a room, which is saved with what was said in it.
/// </summary>
internal static class Script
{
    public const int Members = 6;
    public const int TurnsOfACase = 9;

    private static readonly DateTimeOffset Start = new(2026, 5, 2, 8, 0, 0, TimeSpan.Zero);

    private static readonly ClubId Club = new("club");

    public static MemberId Member(int member) => Club.Member($"member-{member}");

    public static bool HasRoom(int member) => member % 2 == 0;

    /// <summary>The room as it is saved at a step, when all was said that was decided before it.</summary>
    public static Room RoomAt(int member, int step) => new(
        Place(member), Club, Member(member), "channel", $"thread-{member}", true, null, false, Words(member, step), $"panel-{step}", [], step > 0,
        $"event-{member}-{step}", RoomState.Open, Start, step + 1);

    public static string Place(int member) => $"place-{member}";

    public static BikeId Bike(int member) => new($"bike-{member}");

    public static CaseId CaseAt(int member, int step) => new($"case-{member}-{step / TurnsOfACase:D6}");

    /// <summary>The step that a stored case stands at, from 0.</summary>
    public static int StepOf(Case c) => (int)(c.LastTurnAt - Start).TotalSeconds;

    public static int BikeVersion(int step) => (step / 3) + 1;

    public static TurnSaved Turn(int member, int step)
    {
        var turn = (step % TurnsOfACase) + 1;
        var closes = turn == TurnsOfACase;
        var at = At(step);
        var first = step - turn + 1;
        var c = Case.New(CaseAt(member, step), Member(member), Bike(member), Place(member), At(first)) with
        {
            Phase = closes ? CasePhase.Solved : CasePhase.Asking,
            OpeningWords = Words(member, first),
            Entries = [.. Enumerable.Range(first, turn).Select(s =>
                new CaseEntry(s - first + 1, EntryKind.Answer, $"check-{s % 7}", Words(member, s), 1, At(s)))],
            Open = closes ? Ask.Nothing : new Ask(AskKind.Check, $"check-{(step + 1) % 7}", 0, turn),
            Turn = turn,
            Version = turn,
            KnowledgeVersion = "torture",
            LastTurnAt = at,
            ClosedAt = closes ? at : null,
            Handled = [$"event-{member}-{step}"],
        };
        return new TurnSaved(
            c,
            step % 3 == 0 ? BikeAt(member, step) : null,
            closes ? new Outcome(c.Id, c.Phase, "repair", [new OutcomeCause("fault", 0.9)], turn, "torture", at) : null,
            [Message(c, 0, step), Message(c, 1, step)]);
    }

    /// <summary>The bike as it stands after a step.</summary>
    public static BikeProfile BikeAt(int member, int step)
    {
        var version = BikeVersion(step);
        var at = At((version - 1) * 3);
        return BikeProfile.New(Bike(member), Member(member)) with
        {
            Facts = ImmutableSortedDictionary.Create<string, BikeFact>(StringComparer.Ordinal)
                .Add("arm", new BikeFact($"value {version}", at, "told")),
            Version = version,
        };
    }

    private static OutboxMessage Message(Case c, int number, int step) => new(
        $"{c.Id}-{c.Turn}-{number}", c.Id, c.Place, new Card($"Step {step}", [new TextBlock(c.OpeningWords)], []), c.LastTurnAt);

    private static DateTimeOffset At(int step) => Start.AddSeconds(step);

    // From a few letters to some pages, so that documents grow over one and over many pages of the file.
    private static string Words(int member, int step) =>
        string.Concat(Enumerable.Repeat($"it keeps pulling {member}/{step} ", 1 + (step % 11 == 0 ? 300 : step % 5)));
}
