using System.Collections.Immutable;

namespace ShedBot.Knowledge.Wording;

/// <summary>The words in which rules state chances, and the chance that each stands for when a rule is compiled.</summary>
/// <remarks>
/// Words and bands: the first row of the table in ICD 203, Analytic Standards (Office of the Director of National Intelligence, 2015),
/// read in a reproduction of it. The chances are the mid-points of the bands: 1-5, 5-20, 20-45, 45-55, 55-80, 80-95, 95-99 %.
/// </remarks>
public static class ChanceWords
{
    /// <summary>Weakest first.</summary>
    public static ImmutableArray<(string Word, double Chance)> Scale { get; } =
    [
        ("almost no chance", 0.03),
        ("very unlikely", 0.125),
        ("unlikely", 0.325),
        ("roughly even chance", 0.50),
        ("likely", 0.675),
        ("very likely", 0.875),
        ("almost certain", 0.97),
    ];

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
