using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Words that were not understood, as several members or one wrote them.</summary>
/// <param name="Words">As the last one wrote them.</param>
/// <param name="Expected">What was asked then, as ids; see <see cref="UnheardWords.Expected"/>.</param>
/// <param name="Times">How often.</param>
/// <param name="Members">By how many members.</param>
/// <param name="MayMean">What they may mean, likeliest first; for a moderator to choose from.</param>
public sealed record UnheardRow(string Words, ImmutableArray<string> Expected, int Times, int Members, DateTimeOffset Last, ImmutableArray<HeardGuess> MayMean)
{
    /// <summary>Only one member wrote so: the words may be nobody else's, and may give away who it was.</summary>
    public bool OfOneMember => Members < 2;
}

/// <summary>Ranks the words that were not understood: the same words of several members first.</summary>
public static class UnheardReport
{
    private const int Guesses = 3;

    public static ImmutableArray<UnheardRow> Of(Listener listener, IEnumerable<UnheardWords> unheard) =>
    [
        .. unheard.GroupBy(u => PlainWords.Folded(u.Words), StringComparer.Ordinal)
            .Where(g => g.Key.Length > 0)
            .Select(g => (g.Key, All: g.OrderByDescending(u => u.At).ThenBy(u => u.Words, StringComparer.Ordinal).ToList()))
            .Select(g => new UnheardRow(
                g.All[0].Words,
                [.. g.All.Select(u => u.Expected).Distinct().Order(StringComparer.Ordinal)],
                g.All.Count,
                g.All.Select(u => u.Member).Distinct().Count(),
                g.All[0].At,
                listener.Guess(g.All[0].Words, Guesses)))
            .OrderByDescending(r => r.Members).ThenByDescending(r => r.Times).ThenByDescending(r => r.Last).ThenBy(r => r.Words, StringComparer.Ordinal),
    ];
}
