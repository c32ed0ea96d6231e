using System.Buffers.Binary;
using ShedBot.Coaching.Logbook;
using ShedBot.Pictures;
using SkiaSharp;

namespace ShedBot.Tests.Pictures;

/// <summary>A painted timeline, decoded again.</summary>
internal sealed class Painted : IDisposable
{
    private readonly SKBitmap pixels;

    private Painted(byte[] png, TimelineSheet sheet) => (Png, Sheet, pixels) = (png, sheet, SKBitmap.Decode(png));

    public byte[] Png { get; }

    public TimelineSheet Sheet { get; }

    /// <summary>Width and height as the file says. Source: ISO/IEC 15948 (PNG), 5.2 and 11.2.2: eight bytes of signature, then the chunk IHDR.</summary>
    public (int Width, int Height) Size => (BinaryPrimitives.ReadInt32BigEndian(Png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(Png.AsSpan(20)));

    public static Painted Of(Timeline timeline, PictureLook look)
    {
        var face = PlainFace.Find(PlainFace.UsualFolders) ?? throw new InvalidOperationException("These tests need a typeface such as DejaVu Sans.");
        TimelinePlot.Use(face);
        return new Painted(TimelinePlot.Paint(timeline, Palette.Of(look), face), TimelinePlot.Lay(timeline, face));
    }

    /// <returns>As #rrggbb.</returns>
    public string At(float x, float y)
    {
        var pixel = pixels.GetPixel((int)MathF.Round(x), (int)MathF.Round(y));
        return $"#{pixel.Red:x2}{pixel.Green:x2}{pixel.Blue:x2}";
    }

    public bool IsOpaque => pixels.Pixels.All(p => p.Alpha == 255);

    /// <summary>How many pixels round a place have exactly this colour.</summary>
    public int Count(float x, float y, int reach, string colour) => Around(x, y, reach).Count(p => p == colour);

    /// <summary>Which pixels round a place are not of the ground: a shape without its colour.</summary>
    public bool[] Mask(float x, float y, int reach, string ground) => [.. Around(x, y, reach).Select(p => p != ground)];

    public void Dispose() => pixels.Dispose();

    private IEnumerable<string> Around(float x, float y, int reach) =>
        from dy in Enumerable.Range(-reach, (2 * reach) + 1)
        from dx in Enumerable.Range(-reach, (2 * reach) + 1)
        select At(x + dx, y + dy);
}
