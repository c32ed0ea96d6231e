using System.Collections.Immutable;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Finds what was meant among choices, by some words of it.</summary>
internal static class Search
{
    private static readonly ImmutableHashSet<string> Small =
        ["the", "a", "an", "my", "of", "for", "to", "at", "on", "in", "and", "it", "is", "its", "with", "when", "that", "this", "how"];

    /// <summary>Those that hold most of the words first; with no words, all as they come. What holds none of them is left out.</summary>
    public static IEnumerable<Choice> Ranked(ImmutableArray<Choice> choices, string typed)
    {
        var wanted = Words(typed);
        return wanted.Length == 0
            ? choices
            : choices.Select(c => (Choice: c, Fit: Fit(c, wanted))).Where(f => f.Fit > 0).OrderByDescending(f => f.Fit).Select(f => f.Choice);
    }

    /// <summary>The one that is named as a whole, or the only one that holds all the words; null when there is none or there are several.</summary>
    public static Choice? Only(ImmutableArray<Choice> choices, string typed)
    {
        var plain = Plain(typed);
        if (choices.FirstOrDefault(c => c.Value == typed.Trim()) is { } value) return value;
        if (plain.Length == 0) return null;
        if (choices.FirstOrDefault(c => Plain(c.Says) == plain || Plain(c.Value) == plain) is { } named) return named;
        var wanted = Words(typed);
        return wanted.Length > 0 && choices.Where(c => wanted.All(w => Holds(c.Says, w))).Take(2).ToList() is [var only] ? only : null;
    }

    private static int Fit(Choice choice, ImmutableArray<string> wanted) => wanted.Sum(w => Holds(choice.Says, w) ? 3 : Holds(choice.Value, w) || Holds(choice.Detail, w) ? 1 : 0);

    private static bool Holds(string text, string word) => Pieces(text).Any(p => p.StartsWith(word, StringComparison.Ordinal));

    private static ImmutableArray<string> Words(string text)
    {
        ImmutableArray<string> all = [.. Pieces(text)];
        ImmutableArray<string> large = [.. all.Where(p => !Small.Contains(p))];
        return large.IsEmpty ? all : large;
    }

    private static string Plain(string text) => string.Join(' ', Pieces(text));

    private static IEnumerable<string> Pieces(string text) => Tokens.Of(text).SelectMany(t => t.Split('-', StringSplitOptions.RemoveEmptyEntries));
}
