using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ShedBot.Coaching.Logbook;

/// <summary>A typed line in small pieces: words in small letters, numbers, and days as 2026-03-01. What parts them is dropped.</summary>
internal static partial class Tokens
{
    public static ImmutableArray<string> Of(string line) => [.. Piece().Matches(line.ToLowerInvariant().Replace('’', '\'')).Select(m => m.Value)];

    /// <summary>Whether all of the line was taken into pieces; what is left out else is something we do not read, such as a question mark.</summary>
    public static bool Whole(string line) => Rest().IsMatch(Piece().Replace(line.ToLowerInvariant().Replace('’', '\''), ""));

    [GeneratedRegex(@"\d{1,4}-\d{1,2}-\d{1,2}(?!\d)|\d{1,2}[./]\d{1,2}[./]\d{2,4}(?!\d)|\d{1,2}/\d{1,2}(?!\d)|\d{1,2}:\d{2}(?!\d)|-?\d+(?:[.,]\d+)?|[\p{L}][\p{L}'-]*", RegexOptions.CultureInvariant)]
    private static partial Regex Piece();

    [GeneratedRegex(@"\A[\s,.;:!/&+]*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Rest();
}
