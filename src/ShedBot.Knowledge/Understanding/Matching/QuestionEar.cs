using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>Whether the rider asks how something is done.</summary>
internal static class QuestionEar
{
    private static readonly FrozenSet<string> Asking = FrozenSet.Create(
        "how", "what", "whats", "what's", "which", "when", "where", "should", "do", "does", "can", "is", "are", "whats", "any", "need", "tips", "best", "explain", "advice", "wat", "wot", "hw", "teach", "correct");

    private static readonly FrozenSet<string> AskingAnywhere = FrozenSet.Create("how", "which", "what", "whats", "what's", "tips", "advice", "explain", "recommend", "tell");

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
        return letters.Contains('?') || words.Take(4).Any(Asking.Contains) || words.Exists(AskingAnywhere.Contains);
    }
}
