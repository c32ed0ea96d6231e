using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Compiling;

/// <summary>The words of a rule as chances, aligned with the states of a finding.</summary>
internal static class Strengths
{
    /// <summary>Words that add up to more than this contradict each other; up to it the excess is rounding of the bands to their middles.</summary>
    public const double MostTheyMayAddUpTo = 1.05;

    /// <summary>Chances that add up to more are scaled down together: at a sum of 1 the normal state would be impossible, and one wrong answer could never be made up for.</summary>
    public const double MaxSum = 0.99;

    /// <param name="words">State id to chance word.</param>
    /// <returns>0 where no word stands: the fault adds nothing to such a state.</returns>
    public static double[] Gross(IReadOnlyList<string> states, IReadOnlyDictionary<string, string> words)
    {
        var gross = states.Select((s, v) => v > 0 && words.TryGetValue(s, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : 0).ToArray();
        var sum = gross.Sum();
        return sum <= MaxSum ? gross : [.. gross.Select(g => g * MaxSum / sum)];
    }

    /// <summary>The chances as written, before any scaling.</summary>
    public static double Sum(IEnumerable<string> words) =>
        words.Sum(w => ChanceWords.TryChance(w, out var chance) ? chance : 0);

    public static ImmutableArray<double> Leak(FindingRule finding, CompileOptions options)
    {
        var leak = finding.States.Select(s =>
            finding.SeenAnyway.TryGetValue(s.Id, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : options.StateLeak).ToArray();
        if (leak.Length > 0) leak[0] = 1 - leak.Skip(1).Sum();
        return [.. leak];
    }
}
