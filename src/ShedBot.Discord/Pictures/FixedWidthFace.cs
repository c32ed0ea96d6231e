using System.Collections.Immutable;
using SkiaSharp;

namespace ShedBot.Discord.Pictures;

/// <summary>A typeface whose letters are all of one width.</summary>
internal sealed class FixedWidthFace
{
    // Free ones first that are drawn for screens; then any other that says of itself that it is of fixed width.
    private static readonly ImmutableArray<string> Preferred = ["DejaVuSansMono.ttf", "NotoSansMono-Regular.ttf", "LiberationMono-Regular.ttf", "UbuntuMono-R.ttf"];

    private FixedWidthFace(SKTypeface typeface) => Typeface = typeface;

    /// <summary>Where systems keep their typefaces; those that are not there are passed over.</summary>
    public static ImmutableArray<string> UsualFolders { get; } =
    [
        "/usr/share/fonts", "/usr/local/share/fonts", "/System/Library/Fonts", "/Library/Fonts",
        Environment.GetFolderPath(Environment.SpecialFolder.Fonts),
    ];

    public SKTypeface Typeface { get; }

    /// <summary>Reads the folders and what is below them.</summary>
    /// <returns>The best that was found, or null.</returns>
    public static FixedWidthFace? Find(IEnumerable<string> folders) => Files(folders)
        .OrderBy(Rank)
        .ThenBy(f => f, StringComparer.Ordinal)
        .Select(Read)
        .FirstOrDefault(f => f is not null);

    /// <summary>Whether there is a file with the name of a typeface that we know; it is not opened.</summary>
    public static bool HasPreferred(IEnumerable<string> folders) => Files(folders).Any(f => Preferred.Contains(Path.GetFileName(f)));

    /// <summary>Whether it has every letter of the lines.</summary>
    public bool Has(IEnumerable<string> lines) => lines.All(l => l.Length == 0 || Typeface.ContainsGlyphs(l));

    private static IEnumerable<string> Files(IEnumerable<string> folders) => folders
        .Where(f => f.Length > 0 && Directory.Exists(f))
        .SelectMany(f => Directory.EnumerateFiles(f, "*.?tf", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true }));

    private static int Rank(string file) => Preferred.IndexOf(Path.GetFileName(file)) is var at && at >= 0 ? at
        : Plain(Path.GetFileNameWithoutExtension(file)) ? Preferred.Length : Preferred.Length + 1;

    private static bool Plain(string name) =>
        !name.Contains("Bold", StringComparison.OrdinalIgnoreCase)
        && !name.Contains("Italic", StringComparison.OrdinalIgnoreCase)
        && !name.Contains("Oblique", StringComparison.OrdinalIgnoreCase);

    private static FixedWidthFace? Read(string file)
    {
        var typeface = SKTypeface.FromFile(file);
        if (typeface is { IsFixedPitch: true } && typeface.ContainsGlyphs("Aa1|_-/\\()[]<>'")) return new FixedWidthFace(typeface);
        typeface?.Dispose();
        return null;
    }
}
