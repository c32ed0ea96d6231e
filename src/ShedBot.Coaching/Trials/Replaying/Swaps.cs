using System.Collections.Immutable;

namespace ShedBot.Coaching.Trials.Replaying;

internal static class Swaps
{
    /// <summary>Alike swaps counted together, most often first.</summary>
    public static ImmutableArray<Swap> Commonest(IEnumerable<(string Old, string New, int Count)> swaps, int most) =>
    [
        .. swaps.GroupBy(s => (s.Old, s.New), (s, group) => new Swap(s.Old, s.New, group.Sum(g => g.Count)))
            .OrderByDescending(s => s.Count).ThenBy(s => s.Old, StringComparer.Ordinal).ThenBy(s => s.New, StringComparer.Ordinal)
            .Take(most),
    ];
}
