using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>A cause that led and was not what was mended.</summary>
/// <param name="Led">The id of the fault that led.</param>
/// <param name="Mended">The id of the one that was mended.</param>
/// <param name="AfterComplaint">How often it led right after the complaint.</param>
/// <param name="BeforeRepair">How often it still led when the first repair was shown.</param>
public sealed record GuessRow(string Led, string Mended, int AfterComplaint, int BeforeRepair);

/// <param name="Judged">Mended cases that were looked at.</param>
/// <param name="RightAfterComplaint">In how many of them the cause that led right after the complaint was the one mended.</param>
/// <param name="RightBeforeRepair">The same when the first repair was shown.</param>
/// <param name="Rows">What was guessed wrongly before the first repair most often first.</param>
public sealed record GuessReport(int Judged, int RightAfterComplaint, int RightBeforeRepair, ImmutableArray<GuessRow> Rows);

/// <summary>What led first, beside what was mended in the end.</summary>
public static class FirstGuesses
{
    public static GuessReport Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases) => From(knowledge, RetoldCase.All(knowledge, cases));

    internal static GuessReport From(KnowledgeBase knowledge, IEnumerable<RetoldCase> cases)
    {
        var judged = cases.Select(c => (Case: c, Cause: c.Cause()))
            .Where(c => c.Cause is not null)
            .Select(c => (c.Cause, After: c.Case.AfterComplaint(), Before: c.Case.BeforeRepair()))
            .Where(c => c.After is not null)
            .Select(c => (
                Mended: c.Cause!,
                First: RetoldCase.Lead(knowledge, c.After!.Value),
                Then: RetoldCase.Lead(knowledge, c.Before ?? c.After!.Value)))
            .ToList();
        return new GuessReport(
            judged.Count,
            judged.Count(j => j.First == j.Mended),
            judged.Count(j => j.Then == j.Mended),
            [
                .. judged.SelectMany(j => new[] { (j.Mended, Led: j.First, Early: true), (j.Mended, Led: j.Then, Early: false) })
                    .Where(j => j.Led != j.Mended)
                    .GroupBy(j => (j.Led, j.Mended))
                    .Select(g => new GuessRow(g.Key.Led, g.Key.Mended, g.Count(j => j.Early), g.Count(j => !j.Early)))
                    .OrderByDescending(r => r.BeforeRepair).ThenByDescending(r => r.AfterComplaint)
                    .ThenBy(r => r.Led, StringComparer.Ordinal).ThenBy(r => r.Mended, StringComparer.Ordinal),
            ]);
    }
}
