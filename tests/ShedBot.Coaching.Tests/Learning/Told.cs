using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>Closed cases of the invented pump, line by line.</summary>
internal static class Told
{
    public static readonly DateTimeOffset Now = Pump.Noon;

    /// <summary>Closed sixty days ago: long enough to count, and faded twice.</summary>
    public static readonly DateTimeOffset Then = Now.AddDays(-60);

    /// <param name="number">The case's own; no two cases of one test share it.</param>
    public static ClosedCase Case(int number, string member, CasePhase end, params CaseEntry[] entries)
    {
        var id = new CaseId($"c{number:0000}");
        var (owner, bike) = (new MemberId(member), BikeId.Of(new MemberId(member)));
        var @case = Cases.Case.New(id, owner, bike, "here", Then) with { Phase = end, Entries = [.. entries], ClosedAt = Then };
        var held = end == CasePhase.Solved ? entries.Last(e => e.Kind == EntryKind.RepairHeld).Subject : null;
        return new ClosedCase(@case, BikeProfile.New(bike, owner), new Outcome(id, end, held, [], 0, "old rules", Then));
    }

    /// <summary>The plainest mended case: a complaint, and the repair that held.</summary>
    public static ClosedCase Mended(int number, string member, string repair, string complaint = "no-water") =>
        Case(number, member, CasePhase.Solved, Has(complaint), Held(repair));

    public static CaseEntry Has(string complaint) => Line(EntryKind.Complaint, complaint);

    public static CaseEntry Said(string check, string state) => Line(EntryKind.Answer, check, state);

    public static CaseEntry Held(string repair) => Line(EntryKind.RepairHeld, repair);

    public static CaseEntry Failed(string repair) => Line(EntryKind.RepairFailed, repair);

    public static CaseEntry Line(EntryKind kind, string subject, string? value = null) => new(1, kind, subject, value, 1, Then);

    /// <summary>So many of each, each by another of so many members.</summary>
    public static ImmutableArray<ClosedCase> Many(int members, params (int Count, Func<int, string, ClosedCase> Make)[] kinds)
    {
        var number = 0;
        return
        [
            .. kinds.SelectMany(k => Enumerable.Range(0, k.Count).Select(_ =>
            {
                number++;
                return k.Make(number, $"m{number % members}");
            })),
        ];
    }
}
