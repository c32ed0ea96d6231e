using FuzzySharp;

namespace ShedBot.Knowledge.Problems;

/// <summary>The word that was probably meant.</summary>
internal static class Nearest
{
    /// <summary>Ratio of 100 below which two words are not worth comparing; our own choice, tried on the keys of the format.</summary>
    private const int Cutoff = 60;

    /// <returns>"Did you mean 'x'?", or nothing when no word is near.</returns>
    public static string Ask(string word, IEnumerable<string> choices) =>
        Of(word, choices) is { } near ? $"Did you mean '{near}'?" : "";

    /// <returns>"Did you mean 'x'?" when one word is near, else the words to choose from.</returns>
    public static string AskOrList(string word, IReadOnlyCollection<string> choices) =>
        Of(word, choices) is { } near && choices.Count > 8
            ? $"Did you mean '{near}'?"
            : (Of(word, choices) is { } close ? $"Did you mean '{close}'? " : "") + (choices.Count == 0
                ? "There is none yet."
                : $"It can be: {string.Join(", ", choices.Order(StringComparer.Ordinal).Take(12))}{(choices.Count > 12 ? ", ..." : "")}.");

    private static string? Of(string word, IEnumerable<string> choices) =>
        word.Length > 80
            ? null
            : choices.Select(c => (Word: c, Score: Fuzz.Ratio(word, c)))
                .Where(c => c.Score >= Cutoff)
                .OrderByDescending(c => c.Score).ThenBy(c => c.Word, StringComparer.Ordinal)
                .Select(c => c.Word)
                .FirstOrDefault();
}
