using System.Buffers.Binary;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Tests.Drawing;
using SkiaSharp;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.Pictures;

/// <summary>A machine may have no fixed-width typeface; what needs one then says so and passes.</summary>
public sealed class CardPicturesTests(ITestOutputHelper output)
{
    private static readonly FixedWidthFace? Face = FixedWidthFace.Find(FixedWidthFace.UsualFolders);

    [Fact]
    public void Draw_NoTypeface_IsNone() => Assert.Null(CardPictures.None.Draw("[==]"));

    [Fact]
    public void Find_FolderWithoutTypefaces_IsNone() => Assert.Null(FixedWidthFace.Find([Path.Combine(AppContext.BaseDirectory, "knowledge"), "", "/nowhere"]));

    [Fact]
    public void Draw_EveryDrawingOfTheRules_IsAPictureThatFitsATelephone()
    {
        if (!HasFace()) return;
        var pictures = new CardPictures(Face);
        var drawings = Shed.Knowledge.Checks.Values.Where(c => c.ShowMe is not null)
            .Select(c => DrawingParts.Of(c.ShowMe!).Lines)
            .Where(d => d.Length > 0)
            .ToList();
        Assert.NotEmpty(drawings);
        foreach (var drawing in drawings)
        {
            var png = pictures.Draw(drawing)!.Value.ToArray();
            // PNG, third edition (W3C 2025), 5.2 and 11.2.1: the signature, then the header with width and height.
            Assert.Equal(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A }, png[..8]);
            Assert.InRange(BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), 100, 1000);
            Assert.InRange(BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)), 50, 2000);
        }
    }

    [Fact]
    public void Draw_ADrawing_HasContrastAndAnUnbrokenMargin()
    {
        if (!HasFace()) return;
        using var bitmap = SKBitmap.Decode(new CardPictures(Face).Draw("|####|  wire\n|    |")!.Value.ToArray());
        var colours = bitmap.Pixels.Select(Luminance).ToList();
        var (paper, ink) = (Luminance(bitmap.GetPixel(12, 12)), colours.Min());
        // WCAG 2.2, success criterion 1.4.3: 4.5 to 1, both against the ground and for those who ask for more, 7 to 1.
        Assert.True((paper + 0.05) / (ink + 0.05) >= 7, $"Contrast {(paper + 0.05) / (ink + 0.05):0.0}:1");
        for (var x = 8; x < bitmap.Width - 8; x++)
        {
            for (var y = 8; y < 20; y++)
            {
                Assert.Equal(bitmap.GetPixel(12, 12), bitmap.GetPixel(x, y));
                Assert.Equal(bitmap.GetPixel(12, 12), bitmap.GetPixel(x, bitmap.Height - 1 - y));
            }
        }
    }

    [Fact]
    public void Draw_TheSameTwice_GivesTheKeptPicture()
    {
        if (!HasFace()) return;
        var pictures = new CardPictures(Face);
        Assert.True(pictures.Draw("[==]")!.Value.Equals(pictures.Draw("[==]")!.Value));
        Assert.Equal(pictures.Draw("[==]")!.Value.ToArray(), new CardPictures(Face).Draw("[==]")!.Value.ToArray());
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n  \n")]
    [InlineData("漢字 🔧 that a fixed-width face rarely has")]
    public void Draw_NothingOrLettersItLacks_IsShownAsText(string text)
    {
        if (HasFace()) Assert.Null(new CardPictures(Face).Draw(text));
    }

    [Fact]
    public void OfThisMachine_NoTypeface_SaysSoAtOnce()
    {
        var said = new List<string>();
        _ = CardPictures.OfThisMachine(["/nowhere"], said.Add);
        Assert.Contains("typeface", Assert.Single(said), StringComparison.Ordinal);
    }

    [Fact]
    public void OfThisMachine_KnownNameButNoTypeface_SaysSoAtTheFirstDrawing()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "DejaVuSansMono.ttf"), "no typeface");
            var said = new List<string>();
            var pictures = CardPictures.OfThisMachine([folder.FullName], said.Add);
            Assert.Empty(said);
            Assert.Null(pictures.Draw("[==]"));
            Assert.Null(pictures.Draw("[==]"));
            Assert.Single(said);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Draw_TooWideOrTooTall_IsShownAsText()
    {
        if (!HasFace()) return;
        var pictures = new CardPictures(Face);
        Assert.NotNull(pictures.Draw(new string('=', DrawingSheet.MostColumns)));
        Assert.Null(pictures.Draw(new string('=', DrawingSheet.MostColumns + 1)));
        Assert.Null(pictures.Draw(string.Concat(Enumerable.Repeat("=\n", DrawingSheet.MostLines + 1))));
    }

    private bool HasFace()
    {
        if (Face is null) output.WriteLine("No fixed-width typeface on this machine: nothing is drawn here.");
        return Face is not null;
    }

    /// <summary>Relative luminance as WCAG 2.2 defines it.</summary>
    private static double Luminance(SKColor colour)
    {
        return (0.2126 * Linear(colour.Red)) + (0.7152 * Linear(colour.Green)) + (0.0722 * Linear(colour.Blue));

        static double Linear(byte channel) => channel / 255.0 is var c && c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
