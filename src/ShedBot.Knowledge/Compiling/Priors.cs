using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Compiling;

/// <summary>How common each fault is, from its word.</summary>
internal static class Priors
{
    /// <summary>
    /// Fault id to P(fault). Where the words of all faults together would have a machine come with more than
    /// <see cref="CompileOptions.FaultsAtOnce"/> faults on average, all are scaled down alike: authors judge a fault beside its neighbours,
    /// and a hundred faults in one file must not mean that every bike has several of them.
    /// </summary>
    public static ImmutableSortedDictionary<string, double> Of(Draft rules, CompileOptions options)
    {
        var words = rules.Faults.Select(f => (f.Rule.Id, Prior: FrequencyWords.Priors[f.Rule.HowCommon])).ToList();
        var scale = Math.Min(1, options.FaultsAtOnce / words.Sum(w => w.Prior));
        return words.ToImmutableSortedDictionary(w => w.Id, w => w.Prior * scale, StringComparer.Ordinal);
    }

    /// <summary>The chance when the odds are multiplied.</summary>
    /// <param name="times">Above 0; with exactly 1 the chance stays as it is, to the last digit.</param>
    public static double Times(double chance, double times) => times == 1 ? chance : chance * times / (1 - chance + (chance * times));
}
