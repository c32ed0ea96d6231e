using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>A closed case told anew through the rules of today: what they would have believed at each point. Worked out when it is asked for.</summary>
internal sealed class RetoldCase(ClosedCase closed, bool mended, ImmutableArray<string> complaints, Retelling teller)
{
    public ClosedCase Closed => closed;

    public bool Mended => mended;

    /// <summary>What was told, by id, in the order it was told; empty when nothing was that the rules know.</summary>
    public ImmutableArray<string> Complaints => complaints;

    /// <summary>By fault, after the first complaint; null when there was none.</summary>
    public ImmutableArray<double>? AfterComplaint() => teller.Believed(closed, First(EntryKind.Complaint) + 1);

    /// <summary>By fault, when the first repair was shown; null when none was.</summary>
    public ImmutableArray<double>? BeforeRepair() => teller.Believed(closed, First(EntryKind.RepairShown));

    /// <summary>The fault that was mended: of those that the repair which held is for, the likeliest by the whole story; null unless mended.</summary>
    public string? Cause() => mended && teller.Mendable(closed.Outcome.Repair!) is { IsEmpty: false } faults
        ? teller.Likeliest(faults, closed)
        : null;

    /// <summary>Each question that was put: its check, and the most that its answer moved the chance of any fault; null without an answer.</summary>
    public IEnumerable<(string Check, EntryKind Came, double? Moved)> Moves()
    {
        var entries = closed.Case.Entries;
        for (var at = 0; at < entries.Length; at++)
        {
            var entry = entries[at];
            if (entry.Struck || entry.Kind is not (EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot) || !teller.Knows(entry.Subject)) continue;
            double? moved = entry.Kind == EntryKind.Answer && teller.Believed(closed, at) is { } before && teller.Believed(closed, at + 1) is { } after
                ? before.Zip(after, (b, a) => Math.Abs(a - b)).Max()
                : null;
            yield return (entry.Subject, entry.Kind, moved);
        }
    }

    /// <param name="progress">How far it is, 0 to 1, as cases are looked at; or null.</param>
    public static ImmutableArray<RetoldCase> All(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases, IProgress<double>? progress = null, CancellationToken ct = default)
    {
        ImmutableArray<ClosedCase> closed = [.. cases.Where(c => c.Case.IsClosed).OrderBy(c => c.Case.Id.Value, StringComparer.Ordinal)];
        var teller = new Retelling(knowledge, closed.Length, progress, ct);
        return [.. closed.Select(teller.Tell)];
    }

    /// <summary>The likeliest fault.</summary>
    public static string Lead(KnowledgeBase knowledge, ImmutableArray<double> chances) =>
        knowledge.Model.Faults[Enumerable.Range(0, chances.Length).MaxBy(f => Math.Round(chances[f], 9))].Id;

    /// <returns>-1 when there is none.</returns>
    private int First(EntryKind kind)
    {
        var entries = closed.Case.Entries;
        for (var at = 0; at < entries.Length; at++)
        {
            if (entries[at].Kind == kind && !entries[at].Struck) return at;
        }

        return -1;
    }
}
