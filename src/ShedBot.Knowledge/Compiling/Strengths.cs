using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Compiling;

/// <summary>The words of a rule as chances, aligned with the states of a finding.</summary>
internal static class Strengths
{
    /// <summary>Words that add up to more than this contradict each other; up to it the excess is rounding of the bands to their middles.</summary>
    public const double MostTheyMayAddUpTo = 1.05;

    /// <param name="words">State id to chance word.</param>
    /// <returns>Null where no word stands; scaled down together where they add up to more than <see cref="GrossLink.MaxSum"/>.</returns>
    public static double?[] Gross(IReadOnlyList<string> states, IReadOnlyDictionary<string, string> words)
    {
        var gross = states.Select((s, v) => v > 0 && words.TryGetValue(s, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : (double?)null).ToArray();
        var sum = gross.Sum() ?? 0;
        if (sum <= GrossLink.MaxSum) return gross;
        return [.. gross.Select(g => g * GrossLink.MaxSum / sum)];
    }

    /// <summary>The chances as written, before any scaling.</summary>
    public static double Sum(IReadOnlyDictionary<string, string> words) =>
        words.Values.Sum(w => ChanceWords.TryChance(w, out var chance) ? chance : 0);

    public static ImmutableArray<double> Leak(FindingRule finding, CompileOptions options)
    {
        var leak = finding.States.Select(s =>
            finding.SeenAnyway.TryGetValue(s.Id, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : options.StateLeak).ToArray();
        if (leak.Length > 0) leak[0] = 1 - leak.Skip(1).Sum();
        return [.. leak];
    }
}
