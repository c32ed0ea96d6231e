using System.Collections.Immutable;

namespace ShedBot.Pictures;

/// <summary>The files of a typeface that reads well when it is small.</summary>
/// <param name="Bold">The same as <paramref name="Regular"/> where there is no bold one.</param>
internal sealed record PlainFace(string Regular, string Bold)
{
    /// <summary>Typefaces with letters of all of Europe, drawn for screens; free ones first.</summary>
    private static readonly ImmutableArray<(string Regular, string Bold)> Known =
    [
        ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
        ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"),
        ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
        ("Ubuntu-R.ttf", "Ubuntu-B.ttf"),
        ("DejaVuSansMono.ttf", "DejaVuSansMono-Bold.ttf"),
        ("LiberationMono-Regular.ttf", "LiberationMono-Bold.ttf"),
        ("NotoSansMono-Regular.ttf", "NotoSansMono-Bold.ttf"),
        ("Arial.ttf", "Arial Bold.ttf"),
        ("arial.ttf", "arialbd.ttf"),
    ];

    /// <summary>Where systems keep their typefaces; those that are not there are passed over.</summary>
    public static ImmutableArray<string> UsualFolders { get; } =
    [
        "/usr/share/fonts", "/usr/local/share/fonts", "/System/Library/Fonts", "/Library/Fonts",
        Environment.GetFolderPath(Environment.SpecialFolder.Fonts),
    ];

    /// <summary>Looks for the files by their names in the folders and below them; none is opened.</summary>
    /// <returns>The best that was found, or null.</returns>
    public static PlainFace? Find(IEnumerable<string> folders)
    {
        var files = folders.Where(f => f.Length > 0 && Directory.Exists(f))
            .SelectMany(f => Directory.EnumerateFiles(f, "*.ttf", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true }))
            .Order(StringComparer.Ordinal)
            .GroupBy(f => Path.GetFileName(f), StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return Known.Where(k => files.ContainsKey(k.Regular))
            .Select(k => new PlainFace(files[k.Regular], files.GetValueOrDefault(k.Bold, files[k.Regular]))).FirstOrDefault();
    }
}
