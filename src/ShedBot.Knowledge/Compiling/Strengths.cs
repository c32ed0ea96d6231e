using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Compiling;

/// <summary>The words of a rule as chances, aligned with the states of a finding.</summary>
public static class Strengths
{
    /// <summary>Words that add up to more than this contradict each other; up to it the excess is rounding of the bands to their middles.</summary>
    public const double MostTheyMayAddUpTo = 1.05;

    /// <summary>Chances that add up to more are scaled down together: at a sum of 1 the normal state would be impossible, and one wrong answer could never be made up for.</summary>
    public const double MaxSum = 0.99;

    /// <param name="words">State id to chance word.</param>
    /// <returns>0 where no word stands: the fault adds nothing to such a state.</returns>
    public static double[] Gross(IReadOnlyList<string> states, IReadOnlyDictionary<string, string> words) => Fitted(Stated(states, words));

    /// <summary>The same with learnt chances in place of those of the words. They add no state that the words do not have, and none falls below the leak.</summary>
    /// <param name="chance">By state id: what was learnt, or null.</param>
    public static double[] Learnt(IReadOnlyList<string> states, IReadOnlyDictionary<string, string> words, ImmutableArray<double> leak, Func<string, double?> chance)
    {
        var gross = Stated(states, words);
        for (var v = 1; v < gross.Length; v++)
        {
            if (gross[v] > 0 && chance(states[v]) is { } learnt) gross[v] = learnt;
        }

        var fitted = Fitted(gross);
        for (var v = 1; v < gross.Length; v++) fitted[v] = gross[v] > 0 ? Math.Max(fitted[v], leak[v]) : 0;
        return fitted;
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

    private static double[] Stated(IReadOnlyList<string> states, IReadOnlyDictionary<string, string> words) =>
        [.. states.Select((s, v) => v > 0 && words.TryGetValue(s, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : 0)];

    private static double[] Fitted(double[] gross) => gross.Sum() is var sum and > MaxSum ? [.. gross.Select(g => g * MaxSum / sum)] : gross;
}
