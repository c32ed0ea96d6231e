using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>How often one question was worth asking.</summary>
/// <param name="Check">Its id.</param>
/// <param name="MovedNothing">Answers that moved no cause's chance by more than <see cref="AskedTooMuch.Nothing"/>.</param>
/// <param name="NotSure">'Not sure'.</param>
/// <param name="Cannot">'Can't check'.</param>
public sealed record QuestionRow(string Check, int Asked, int MovedNothing, int NotSure, int Cannot)
{
    public int InVain => MovedNothing + NotSure + Cannot;
}

/// <param name="Usual">The median number of questions of a case.</param>
/// <param name="ManyFrom">From so many on a case is far above the usual: the upper fence, third quartile and half as much again as the quartiles are apart (Tukey 1977).</param>
/// <param name="Many">How many cases had so many.</param>
/// <param name="ManyBy">These by complaint, most first.</param>
/// <param name="Questions">Those asked in vain most often first.</param>
public sealed record AskedReport(double Usual, double ManyFrom, int Many, ImmutableArray<(string Complaint, int Cases)> ManyBy, ImmutableArray<QuestionRow> Questions);

/// <summary>Where the coach asked too much.</summary>
public static class AskedTooMuch
{
    /// <summary>An answer that moves no chance by more than this has moved nothing; a rule of thumb, no source.</summary>
    public const double Nothing = 0.02;

    /// <summary>How far beyond the quartiles the fence stands, as a part of their distance.</summary>
    private const double Fence = 1.5;

    public static AskedReport Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases) => From(RetoldCase.All(knowledge, cases));

    internal static AskedReport From(IReadOnlyCollection<RetoldCase> cases)
    {
        var counts = cases.Select(c => (double)c.Closed.Outcome.Asked).Order().ToList();
        var (low, usual, high) = (Quantile(counts, 0.25), Quantile(counts, 0.5), Quantile(counts, 0.75));
        var from = Math.Floor(high + (Fence * (high - low))) + 1;
        var many = cases.Where(c => c.Closed.Outcome.Asked >= from).ToList();
        return new AskedReport(
            usual,
            from,
            many.Count,
            [
                .. many.SelectMany(c => c.Complaints).GroupBy(c => c, StringComparer.Ordinal).Select(g => (g.Key, g.Count()))
                    .OrderByDescending(g => g.Item2).ThenBy(g => g.Key, StringComparer.Ordinal),
            ],
            [
                .. cases.SelectMany(c => c.Moves()).GroupBy(m => m.Check, StringComparer.Ordinal)
                    .Select(g => new QuestionRow(
                        g.Key, g.Count(), g.Count(m => m.Moved <= Nothing), g.Count(m => m.Came == EntryKind.NotSure), g.Count(m => m.Came == EntryKind.Cannot)))
                    .OrderByDescending(q => q.InVain).ThenByDescending(q => q.Asked).ThenBy(q => q.Check, StringComparer.Ordinal),
            ]);
    }

    /// <summary>Between the two nearest values in proportion; 0 without any.</summary>
    private static double Quantile(List<double> ordered, double share)
    {
        if (ordered.Count == 0) return 0;
        var at = share * (ordered.Count - 1);
        var (below, above) = (ordered[(int)Math.Floor(at)], ordered[(int)Math.Ceiling(at)]);
        return below + ((at - Math.Floor(at)) * (above - below));
    }
}
