using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>A complaint that ended without an answer.</summary>
/// <param name="Complaint">Its id; null for cases in which no complaint of the rules was made out.</param>
/// <param name="Cases">All cases that told it.</param>
/// <param name="HandedOver">Those that a human had to go on with.</param>
/// <param name="Left">Those that the member left.</param>
/// <param name="Members">Members whose cases ended so.</param>
/// <param name="Words">Words that repeat in how they were told, most often first.</param>
public sealed record UnansweredRow(string? Complaint, int Cases, int HandedOver, int Left, int Members, ImmutableArray<RepeatedWord> Words)
{
    public int Open => HandedOver + Left;
}

/// <param name="Cases">How many of the unanswered cases said it.</param>
/// <param name="Members">Of how many members; never one.</param>
public sealed record RepeatedWord(string Word, int Cases, int Members);

/// <summary>Complaints that nobody could answer, ranked: the next rules to write.</summary>
public static class Unanswered
{
    private const int MostWords = 5;

    /// <returns>Most unanswered cases first. Cases that were stopped for safety are answered: the answer was to stop.</returns>
    public static ImmutableArray<UnansweredRow> Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases) => From(RetoldCase.All(knowledge, cases), new Discreet(knowledge).Bare);

    /// <param name="fit">Words of a member made fit for others to read.</param>
    internal static ImmutableArray<UnansweredRow> From(IEnumerable<RetoldCase> cases, Func<string, string> fit) =>
    [
        .. cases.SelectMany(c => c.Complaints.IsEmpty ? [(Complaint: (string?)null, c)] : c.Complaints.Select(complaint => (Complaint: (string?)complaint, c)))
            .GroupBy(c => c.Complaint, c => c.c)
            .Select(g => Row(g.Key, [.. g], fit))
            .Where(r => r.Open > 0)
            .OrderByDescending(r => r.Open).ThenBy(r => r.Complaint, StringComparer.Ordinal),
    ];

    private static UnansweredRow Row(string? complaint, List<RetoldCase> cases, Func<string, string> fit)
    {
        var open = cases.Where(c => c.Closed.Outcome.Phase is CasePhase.HandedOver or CasePhase.Left).ToList();
        return new UnansweredRow(
            complaint,
            cases.Count,
            open.Count(c => c.Closed.Outcome.Phase == CasePhase.HandedOver),
            open.Count(c => c.Closed.Outcome.Phase == CasePhase.Left),
            open.Select(c => c.Closed.Case.Member).Distinct().Count(),
            [
                .. open.SelectMany(c => PlainWords.Of(fit(c.Closed.Case.OpeningWords)).Distinct().Select(word => (Word: word, c.Closed.Case)))
                    .GroupBy(w => w.Word, w => w.Case, StringComparer.Ordinal)
                    .Select(g => new RepeatedWord(g.Key, g.Count(), g.Select(c => c.Member).Distinct().Count()))
                    .Where(w => w.Members > 1)
                    .OrderByDescending(w => w.Cases).ThenBy(w => w.Word, StringComparer.Ordinal)
                    .Take(MostWords),
            ]);
    }
}
