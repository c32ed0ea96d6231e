using System.Collections.Concurrent;

namespace ShedBot.Discord.Pictures;

/// <summary>Drawings in characters as PNG pictures. The same text gives the same picture; the last ones are kept. Safe to share between threads.</summary>
/// <param name="typeface">A fixed-width typeface, or null when the machine has none.</param>
internal sealed class CardPictures(FixedWidthFace? typeface)
{
    private const int MostKept = 256;

    private readonly ConcurrentDictionary<string, ReadOnlyMemory<byte>> kept = new(StringComparer.Ordinal);

    /// <summary>Draws nothing: every drawing is shown as text.</summary>
    public static CardPictures None { get; } = new(null);

    /// <summary>With a typeface of this machine.</summary>
    /// <param name="say">Told once, in words, when there is none.</param>
    public static CardPictures OfThisMachine(Action<string> say)
    {
        var face = FixedWidthFace.Find(FixedWidthFace.UsualFolders);
        if (face is null) say("No fixed-width typeface is installed, so drawings are shown as text. Installing one, such as DejaVu Sans Mono, turns them into pictures.");
        return new CardPictures(face);
    }

    /// <returns>A PNG, or null when it is better shown as text: no typeface, letters that it lacks, or too much to be read as a picture.</returns>
    public ReadOnlyMemory<byte>? Draw(string text)
    {
        if (typeface is null || DrawingSheet.Of(text) is not { } sheet || !typeface.Has(sheet.Lines)) return null;
        if (kept.TryGetValue(text, out var known)) return known;
        // Rules hold some dozen drawings; more than this come only from rules that changed again and again.
        if (kept.Count >= MostKept) kept.Clear();
        var png = DrawingPainter.Paint(sheet, typeface);
        kept[text] = png;
        return png;
    }
}
