using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Whether the rider asks how something is done.</summary>
internal static class QuestionEar
{
    private static readonly FrozenSet<string> Asking = FrozenSet.Create(
        "how", "what", "whats", "what's", "which", "when", "where", "should", "do", "does", "can", "is", "are", "whats", "any", "tips", "best", "explain", "advice", "wat", "wot", "hw", "teach", "correct");

    /// <summary>Pairs that ask wherever they stand.</summary>
    private static readonly FrozenSet<string> AskingPairs = FrozenSet.Create(
        "how to", "how do", "how should", "how can", "how often", "how much", "how long", "how many", "how far", "how tight", "what is", "what size", "what grease", "what order", "what's the", "whats the", "which way", "which order", "which bearing", "which grease", "which one", "which key", "best way", "right way", "proper way", "correct way", "any tips", "any advice", "tell me", "is it normal", "when do", "when should", "where do", "do i", "should i", "can i");

    public static Heard? Hear(string letters, ImmutableArray<Statement> statements, PhraseBook book)
    {
        var threshold = IsAsked(letters) ? Hearing.Question : Hearing.BareQuestion;
        var best = SpanChooser.ReadAll(statements, book)
            .SelectMany(r => r.Matches)
            .Where(m => m.Affirmed >= threshold)
            .OrderByDescending(m => m.Affirmed).ThenBy(m => m.Meaning, StringComparer.Ordinal)
            .FirstOrDefault();
        return best.Meaning is null ? null : new Heard(best.Meaning, ComplaintEar.Rounded(best.Affirmed));
    }

    public static bool IsAsked(string letters)
    {
        var words = Splitter.Split(letters).FindAll(w => w is not ("." or ","));
        return letters.Contains('?') || words.Take(3).Any(Asking.Contains) || words.Zip(words.Skip(1), (a, b) => a + " " + b).Any(AskingPairs.Contains);
    }
}
