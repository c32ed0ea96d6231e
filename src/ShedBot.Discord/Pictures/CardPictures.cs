using System.Collections.Concurrent;

namespace ShedBot.Discord.Pictures;

/// <summary>Drawings in characters as PNG pictures. The same text gives the same picture; the last ones are kept. Safe to share between threads.</summary>
/// <param name="typeface">A fixed-width typeface, or null when the machine has none; asked at the first drawing.</param>
internal sealed class CardPictures(Lazy<FixedWidthFace?> typeface)
{
    private const int MostKept = 256;

    private readonly ConcurrentDictionary<string, ReadOnlyMemory<byte>> kept = new(StringComparer.Ordinal);

    public CardPictures(FixedWidthFace? typeface) : this(new Lazy<FixedWidthFace?>(typeface))
    {
    }

    /// <summary>Draws nothing: every drawing is shown as text.</summary>
    public static CardPictures None { get; } = new((FixedWidthFace?)null);

    /// <summary>With a typeface of this machine. One that is known by its name is read when the first drawing wants it: until then the painter takes no memory.</summary>
    /// <param name="folders">Where typefaces are looked for.</param>
    /// <param name="say">Told once, in words, when there is none: at the start, unless one that was there by its name turns out to be no good.</param>
    public static CardPictures OfThisMachine(IReadOnlyCollection<string> folders, Action<string> say)
    {
        var face = new Lazy<FixedWidthFace?>(() =>
        {
            var found = FixedWidthFace.Find(folders);
            if (found is null) say("No fixed-width typeface is installed, so drawings are shown as text. Installing one, such as DejaVu Sans Mono, turns them into pictures.");
            return found;
        });
        if (!FixedWidthFace.HasPreferred(folders)) _ = face.Value;
        return new CardPictures(face);
    }

    /// <returns>A PNG, or null when it is better shown as text: no typeface, letters that it lacks, or too much to be read as a picture.</returns>
    public ReadOnlyMemory<byte>? Draw(string text)
    {
        if (DrawingSheet.Of(text) is not { } sheet || typeface.Value is not { } face || !face.Has(sheet.Lines)) return null;
        if (kept.TryGetValue(text, out var known)) return known;
        // Rules hold some dozen drawings; more than this come only from rules that changed again and again.
        if (kept.Count >= MostKept) kept.Clear();
        var png = DrawingPainter.Paint(sheet, face);
        kept[text] = png;
        return png;
    }
}
