using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Tests.Samples;

/// <summary>
/// Closed cases of an invented club by the shipped rules: heavy levers, most of them because of a kinked cable, which the rules take for rarer than a dry one.
/// So the coach often shows the wrong repair first, and the club's cases have something to teach.
/// </summary>
internal static class HeavyLevers
{
    private const int Members = 24;

    /// <summary>Long enough ago to count by now.</summary>
    private static readonly TimeSpan Ago = TimeSpan.FromDays(30);

    /// <param name="member">A member of the club, by a name.</param>
    /// <param name="now">When they are looked at.</param>
    public static IEnumerable<TurnSaved> Closed(Func<string, MemberId> member, DateTimeOffset now)
    {
        var stories = Enumerable.Repeat(Kinked, 24).Concat(Enumerable.Repeat(FirstTakenForDry, 12)).Concat(Enumerable.Repeat(Dry, 12)).Concat(Enumerable.Repeat(HandedOver, 3));
        return stories.Select((story, n) => Of(story, n, member(FormattableString.Invariant($"invented{n % Members}")), now - Ago + TimeSpan.FromMinutes(n)));
    }

    private static Story Kinked { get; } = new("reroute-cable", (EntryKind.Answer, "follow-cable", "tight"), (EntryKind.RepairShown, "reroute-cable", null), (EntryKind.RepairHeld, "reroute-cable", null));

    private static Story FirstTakenForDry { get; } = new(
        "reroute-cable",
        (EntryKind.Answer, "slide-wire", "stiff"), (EntryKind.RepairShown, "free-cable", null), (EntryKind.RepairFailed, "free-cable", null),
        (EntryKind.Answer, "follow-cable", "tight"), (EntryKind.RepairShown, "reroute-cable", null), (EntryKind.RepairHeld, "reroute-cable", null));

    private static Story Dry { get; } = new("free-cable", (EntryKind.Answer, "slide-wire", "stiff"), (EntryKind.RepairShown, "free-cable", null), (EntryKind.RepairHeld, "free-cable", null));

    private static Story HandedOver { get; } = new(null, (EntryKind.Answer, "follow-cable", "gentle"), (EntryKind.Answer, "slide-wire", "free"));

    private static TurnSaved Of(Story story, int number, MemberId member, DateTimeOffset at)
    {
        var id = new CaseId(FormattableString.Invariant($"made-{number:0000}"));
        var phase = story.Held is null ? CasePhase.HandedOver : CasePhase.Solved;
        var closed = Case.New(id, member, BikeId.Of(member), FormattableString.Invariant($"made/{number}"), at) with
        {
            Phase = phase,
            Entries = [new CaseEntry(1, EntryKind.Complaint, "lever-heavy", null, 1, at), .. story.Lines.Select((l, i) => new CaseEntry(i + 2, l.Kind, l.Subject, l.Value, 1, at))],
            ClosedAt = at,
            Turn = story.Lines.Length + 1,
            Version = 1,
        };
        return new TurnSaved(closed, null, new Outcome(id, phase, story.Held, [], closed.Turn, "made up", at), []);
    }

    /// <param name="Held">The repair that held; null for a case that was handed to a human.</param>
    /// <param name="Lines">What came after the complaint.</param>
    private sealed record Story(string? Held, params ImmutableArray<(EntryKind Kind, string Subject, string? Value)> Lines);
}
