using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Whether the rider asks how something is done.</summary>
internal static class QuestionEar
{
    /// <summary>Words that ask near the beginning of a sentence, and words that do so only as its very first: "the lever is heavy" asks nothing.</summary>
    private static readonly FrozenSet<string> Asking = FrozenSet.Create(
        "how", "what", "whats", "what's", "which", "where", "any", "tips", "tricks", "best", "explain", "advice", "wat", "wot", "hw", "teach", "correct", "guide", "instructions");

    private static readonly FrozenSet<string> Opening = FrozenSet.Create("should", "do", "does", "can", "is", "are", "shall");

    /// <summary>Pairs that ask wherever they stand.</summary>
    private static readonly FrozenSet<string> AskingPairs = FrozenSet.Create(
        "how to", "how do", "how should", "how can", "how often", "how much", "how long", "how many", "how far", "how tight", "what is", "what size", "what grease", "what order", "what's the", "whats the", "which way", "which order", "which bearing", "which grease", "which one", "which key", "best way", "right way", "proper way", "correct way", "any tips", "any advice", "tell me", "is it normal", "when do", "when should", "when is", "when to", "step by", "some tips", "a guide", "where do", "do i", "should i", "can i");

    public static Heard? Hear(string letters, ImmutableArray<Statement> statements, PhraseBook book)
    {
        var threshold = Threshold(letters);
        var best = SpanChooser.ReadAll(statements, book)
            .SelectMany(r => r.Matches)
            .Where(m => m.Affirmed >= threshold)
            .OrderByDescending(m => m.Affirmed).ThenBy(m => m.Meaning, StringComparer.Ordinal)
            .FirstOrDefault();
        return best.Meaning is null ? null : new Heard(best.Meaning, ComplaintEar.Rounded(best.Affirmed));
    }

    /// <summary>What a topic has to reach. Where nothing is asked it has to be named outright: not by "the lever is super heavy".</summary>
    private static double Threshold(string letters)
    {
        var parts = Splitter.Split(letters);
        var words = parts.FindAll(w => w is not ("." or ","));
        var opens = parts.Where((w, i) => (i == 0 || parts[i - 1] == ".") && Opening.Contains(w)).Any();
        if (opens || words.Take(3).Any(Asking.Contains) || words.Zip(words.Skip(1), (a, b) => a + " " + b).Any(AskingPairs.Contains))
            return Hearing.Question;
        return letters.Contains('?') ? Hearing.MarkedQuestion : Hearing.BareQuestion;
    }
}
