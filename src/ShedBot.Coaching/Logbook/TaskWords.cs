using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Logbook;

/// <summary>Which service task is meant: by its id, by what it is called, or by words that occur in no other.</summary>
public static class TaskWords
{
    private const int MostShown = 8, MostNear = 4;

    private static readonly ImmutableHashSet<string> Small =
        ["the", "a", "an", "my", "of", "for", "to", "at", "on", "in", "and", "it", "i", "do", "up", "all", "with", "its", "you", "is", "be", "that", "this", "now", "one"];

    /// <returns>The task that the text names as a whole, or null.</returns>
    public static ServiceRule? Exactly(KnowledgeBase knowledge, string text)
    {
        var wanted = Plain(text);
        return wanted.Length == 0 ? null : knowledge.Service.Values.FirstOrDefault(r => Plain(r.Id) == wanted || Plain(r.Called) == wanted || Plain(r.Does) == wanted);
    }

    /// <returns>The tasks in which all these words occur, best first.</returns>
    public static ImmutableArray<ServiceRule> Matching(KnowledgeBase knowledge, string text)
    {
        if (Exactly(knowledge, text) is { } exact) return [exact];
        var wanted = Words(text).ToImmutableHashSet(StringComparer.Ordinal);
        if (wanted.IsEmpty) return [];
        return [.. knowledge.Service.Values.Where(r => wanted.All(w => Holds(r.Id + " " + r.Called, w)))];
    }

    /// <returns>The one task that is meant, or the refusal <c>task</c> that names those it could be.</returns>
    public static Result<ServiceRule> Find(KnowledgeBase knowledge, string text)
    {
        var found = Matching(knowledge, text);
        if (found is [var one]) return one;
        var said = Cards.CleanText.OneLine(text, 60);
        if (found.IsEmpty) return new Refusal("task", $"I know no service task called \"{said}\".{Near(knowledge, text)} The plan names them all.");
        var more = found.Length > MostShown ? " and more" : "";
        return new Refusal("task", $"\"{said}\" could be: {string.Join("; ", found.Take(MostShown).Select(r => $"{r.Called} ({r.Id})"))}{more}. Say which.");
    }

    /// <returns>The tasks to choose from while somebody is still typing: those that hold all the words so far.</returns>
    public static ImmutableArray<ServiceRule> Offered(KnowledgeBase knowledge, string typed, int most)
    {
        var wanted = Words(typed).ToList();
        return [.. knowledge.Service.Values.Where(r => wanted.All(w => Holds(r.Id + " " + r.Called, w))).OrderBy(r => r.Called, StringComparer.Ordinal).Take(most)];
    }

    /// <summary>Tasks in which some of the words occur, for whoever misses the name by one.</summary>
    private static string Near(KnowledgeBase knowledge, string text)
    {
        var wanted = Words(text).ToList();
        var near = wanted.SelectMany(w => knowledge.Service.Values.Where(r => Holds(r.Id + " " + r.Called, w))).Distinct().Take(MostNear).Select(r => $"{r.Called} ({r.Id})").ToList();
        return near.Count == 0 ? "" : $" Near it: {string.Join("; ", near)}.";
    }

    /// <summary>From the beginning of a word on: "spoke" is in "spokes", "pad" in "brake-pads"; and "greasing" is "grease".</summary>
    private static bool Holds(string text, string word)
    {
        var stem = word.Length > 5 && word.EndsWith("ing", StringComparison.Ordinal) ? word[..^3] : word;
        return Pieces(text).Any(p => p.StartsWith(stem, StringComparison.Ordinal));
    }

    /// <summary>Whether anything is named at all: "that one" names nothing.</summary>
    public static bool Names(string text) => Named(text) > 0;

    /// <returns>How many of the words can be part of a name.</returns>
    public static int Named(string text) => Words(text).Count();

    private static IEnumerable<string> Words(string text) => Pieces(text).Where(p => !Small.Contains(p));

    private static string Plain(string text) => string.Join(' ', Pieces(text));

    private static IEnumerable<string> Pieces(string text) => Tokens.Of(text).SelectMany(t => t.Split('-', StringSplitOptions.RemoveEmptyEntries));
}
