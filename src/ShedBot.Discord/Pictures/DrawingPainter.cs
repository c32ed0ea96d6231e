using SkiaSharp;

namespace ShedBot.Discord.Pictures;

/// <summary>Paints a sheet: dark letters on a ground of their own, so that it reads the same in a dark and in a light chat.</summary>
internal static class DrawingPainter
{
    /// <summary>Pixels; a telephone shows a picture about half as wide as this.</summary>
    public const int MostWidth = 1000;

    /// <summary>Ink and paper; their contrast is above 12:1, where WCAG 2.2 asks for 4.5:1 (success criterion 1.4.3).</summary>
    public static readonly SKColor Ink = new(0x1E, 0x2A, 0x32), Paper = new(0xF6, 0xF1, 0xE4);

    private static readonly SKColor Edge = new(0xC9, 0xBF, 0xA8);

    /// <summary>Size of the letters in pixels, the most and the least; margin round them.</summary>
    private const float Largest = 30, Smallest = 16;

    private const int Margin = 28;

    private const float LineHeight = 1.22f;

    public static ReadOnlyMemory<byte> Paint(DrawingSheet sheet, FixedWidthFace face)
    {
        using var font = new SKFont(face.Typeface, Largest) { Edging = SKFontEdging.Antialias, Subpixel = true };
        font.Size = Math.Clamp(Largest * (MostWidth - (2 * Margin)) / (sheet.Columns * font.MeasureText("0")), Smallest, Largest);
        var (advance, line) = (font.MeasureText("0"), MathF.Ceiling(font.Size * LineHeight));
        var width = Math.Min(MostWidth, (int)MathF.Ceiling(sheet.Columns * advance) + (2 * Margin));
        var height = (int)(sheet.Lines.Length * line) + (2 * Margin);
        using var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { Color = Ink, IsAntialias = true };
        using var edge = new SKPaint { Color = Edge, Style = SKPaintStyle.Stroke, StrokeWidth = 4 };
        canvas.Clear(Paper);
        canvas.DrawRect(2, 2, width - 4, height - 4, edge);
        for (var i = 0; i < sheet.Lines.Length; i++)
        {
            // Letter by letter, so that columns meet whatever the typeface rounds or ties together.
            var y = Margin + (i * line) - font.Metrics.Ascent;
            for (var c = 0; c < sheet.Lines[i].Length; c++)
            {
                if (sheet.Lines[i][c] != ' ') canvas.DrawText(sheet.Lines[i][c].ToString(), Margin + (c * advance), y, SKTextAlign.Left, font, paint);
            }
        }

        canvas.Flush();
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
