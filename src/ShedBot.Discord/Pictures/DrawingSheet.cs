using System.Collections.Immutable;

namespace ShedBot.Discord.Pictures;

/// <summary>The lines of a drawing without the empty margin that they share.</summary>
/// <param name="Columns">Of the longest line; 1 to <see cref="MostColumns"/>.</param>
internal sealed record DrawingSheet(ImmutableArray<string> Lines, int Columns)
{
    /// <summary>Beyond this the letters would be too small on a telephone, or the picture too tall.</summary>
    public const int MostColumns = 90, MostLines = 60;

    /// <returns>The sheet, or null when the text is empty or too big for a picture.</returns>
    public static DrawingSheet? Of(string text)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n').Select(l => l.TrimEnd()).ToList();
        while (lines is [.., ""]) lines.RemoveAt(lines.Count - 1);
        while (lines is ["", ..]) lines.RemoveAt(0);
        if (lines.Count is 0 or > MostLines) return null;
        var margin = lines.Where(l => l.Length > 0).Min(l => l.Length - l.TrimStart(' ').Length);
        ImmutableArray<string> kept = [.. lines.Select(l => l.Length > 0 ? l[margin..] : l)];
        var columns = kept.Max(l => l.Length);
        return columns <= MostColumns ? new DrawingSheet(kept, columns) : null;
    }
}
