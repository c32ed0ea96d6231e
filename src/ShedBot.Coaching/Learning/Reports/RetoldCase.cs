using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>A closed case told anew through the rules of today: what they would have believed at each point.</summary>
/// <param name="Complaints">What was told, by id, in the order it was told; empty when nothing was that the rules know.</param>
/// <param name="AfterComplaint">By fault, after the first complaint; null when there was none.</param>
/// <param name="BeforeRepair">By fault, when the first repair was shown; null when none was.</param>
/// <param name="Cause">The fault that was mended: of those that the repair which held is for, the likeliest by the whole story; null unless mended.</param>
/// <param name="Moves">Each question that was put: its check, and the most that its answer moved the chance of any fault; null without an answer.</param>
internal sealed record RetoldCase(
    ClosedCase Closed,
    bool Mended,
    ImmutableArray<string> Complaints,
    ImmutableArray<double>? AfterComplaint,
    ImmutableArray<double>? BeforeRepair,
    string? Cause,
    ImmutableArray<(string Check, EntryKind Came, double? Moved)> Moves)
{
    public static ImmutableArray<RetoldCase> All(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases)
    {
        var teller = new Retelling(knowledge);
        return [.. cases.Where(c => c.Case.IsClosed).OrderBy(c => c.Case.Id.Value, StringComparer.Ordinal).Select(teller.Tell)];
    }

    /// <summary>The likeliest fault.</summary>
    public static string Lead(KnowledgeBase knowledge, ImmutableArray<double> chances) =>
        knowledge.Model.Faults[Enumerable.Range(0, chances.Length).MaxBy(f => Math.Round(chances[f], 9))].Id;
}

/// <summary>Tells cases anew, one after the other.</summary>
internal sealed class Retelling(KnowledgeBase knowledge)
{
    private readonly CaseWeigher weigher = new(new RuleSheet(knowledge));

    public RetoldCase Tell(ClosedCase closed)
    {
        var entries = closed.Case.Entries;
        var complaint = First(entries, EntryKind.Complaint);
        var shown = First(entries, EntryKind.RepairShown);
        var mended = StoryReader.IsMended(closed);
        var all = Believed(closed, entries.Length);
        return new RetoldCase(
            closed,
            mended,
            [.. closed.Case.Standing.Where(e => e.Kind == EntryKind.Complaint && knowledge.Complaints.ContainsKey(e.Subject)).Select(e => e.Subject).Distinct()],
            complaint < 0 ? null : Believed(closed, complaint + 1),
            shown < 0 ? null : Believed(closed, shown),
            mended && all is { } chances ? Cause(closed.Outcome.Repair!, chances) : null,
            [.. Moves(closed)]);
    }

    private IEnumerable<(string Check, EntryKind Came, double? Moved)> Moves(ClosedCase closed)
    {
        var entries = closed.Case.Entries;
        for (var at = 0; at < entries.Length; at++)
        {
            var entry = entries[at];
            if (entry.Struck || entry.Kind is not (EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot) || !knowledge.Checks.ContainsKey(entry.Subject)) continue;
            double? moved = entry.Kind == EntryKind.Answer && Believed(closed, at) is { } before && Believed(closed, at + 1) is { } after
                ? before.Zip(after, (b, a) => Math.Abs(a - b)).Max()
                : null;
            yield return (entry.Subject, entry.Kind, moved);
        }
    }

    /// <summary>By fault, after so many lines of the case.</summary>
    private ImmutableArray<double>? Believed(ClosedCase closed, int lines)
    {
        var part = closed with { Case = closed.Case with { Entries = closed.Case.Entries[..lines] } };
        if (StoryReader.Read(part, knowledge) is not { } story) return null;
        var weighed = weigher.Weigh(story, 0, 1, 0);
        return [.. OddsCount.Chances(weigher.Sets, weighed.Told, weighed.Odds)];
    }

    private string? Cause(string repair, ImmutableArray<double> chances) => knowledge.Repairs.TryGetValue(repair, out var rule)
        ? rule.Mends.Keys.Where(f => knowledge.Faults.ContainsKey(f)).OrderByDescending(f => chances[knowledge.Model.FaultAt(f)]).ThenBy(f => f, StringComparer.Ordinal).FirstOrDefault()
        : null;

    private static int First(ImmutableArray<CaseEntry> entries, EntryKind kind)
    {
        for (var at = 0; at < entries.Length; at++)
        {
            if (entries[at].Kind == kind && !entries[at].Struck) return at;
        }

        return -1;
    }
}
