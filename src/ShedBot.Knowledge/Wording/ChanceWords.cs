using System.Collections.Immutable;
using ShedBot.Reasoning.Words;

namespace ShedBot.Knowledge.Wording;

/// <summary>The words in which rules state chances, and the chance that each stands for when a rule is compiled.</summary>
/// <remarks>The words, their bands and the middles of the bands are those of <see cref="LikelihoodWords"/>; here they must be written exactly so.</remarks>
public static class ChanceWords
{
    /// <summary>Weakest first.</summary>
    public static ImmutableArray<(string Word, double Chance)> Scale { get; } =
        [.. Enum.GetValues<LikelihoodWord>().Select(w => (LikelihoodWords.Text(w), LikelihoodWords.Start(w)))];

    /// <exception cref="KeyNotFoundException">It is none of the words.</exception>
    public static double Chance(string word) =>
        TryChance(word, out var chance) ? chance : throw new KeyNotFoundException($"'{word}' is no word for a chance.");

    /// <returns>False, and a chance of 0, when it is none of the words.</returns>
    public static bool TryChance(string word, out double chance)
    {
        foreach (var (known, value) in Scale)
        {
            if (known != word) continue;
            chance = value;
            return true;
        }

        chance = 0;
        return false;
    }
}
