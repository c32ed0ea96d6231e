using System.Collections.Immutable;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>
/// The end of a sentence that a question has begun, such as "most likely ...": as people type it, on a telephone with a capital, with the beginning once more
/// and a full stop, and as the rules want it, to stand inside of other sentences.
/// </summary>
internal static class Fragment
{
    /// <summary>What a question of the sheets begins and people type once more.</summary>
    private static readonly ImmutableArray<string> Beginnings = ["the trouble is that ", "most likely ", "it is time to ", "time to "];

    /// <summary>Words that are written small inside of a sentence. Any other first word might be a name, and stays as it was typed.</summary>
    private static readonly ImmutableHashSet<string> Small =
    [
        "a", "an", "the", "one", "two", "three", "both", "all", "some", "something", "somebody", "no", "nothing", "nobody", "there", "it", "its", "this", "that", "these", "those", "whatever",
        "what", "which", "whether", "how", "when", "where", "why", "who", "my", "your", "in", "on", "at", "with", "without", "too", "not", "part", "parts", "oil", "grease", "water", "dirt", "mud", "rust",
    ];

    /// <summary>Something that is: "the small ball is missing".</summary>
    public static string Of(string text) => Begun(text) is { Length: > 0 } rest && Small.Contains(First(rest).ToLowerInvariant()) ? Lower(rest) : Begun(text);

    /// <summary>Something to do, which begins with a verb: "tighten the three screws".</summary>
    public static string ToDo(string text) => Lower(Begun(text));

    private static string Begun(string text)
    {
        var rest = text.Trim();
        if (Beginnings.FirstOrDefault(b => rest.Length > b.Length && rest.StartsWith(b, StringComparison.OrdinalIgnoreCase)) is { } begun) rest = rest[begun.Length..].TrimStart();
        var end = rest.TrimEnd('.', ' ');
        // Three dots, or a shortened word, are left to whoever wrote them.
        return end.Length > 0 && rest[end.Length..].Count(c => c == '.') <= 1 ? end : rest;
    }

    /// <summary>A word that is written large throughout, such as CDI, is none to be changed.</summary>
    private static string Lower(string text) => First(text) is { Length: > 0 } first && !first.Skip(1).Any(char.IsUpper) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string First(string text) => text.Split(' ', 2)[0].TrimEnd(',', ':');
}
