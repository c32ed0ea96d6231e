using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Simulating;
using ShedBot.Pictures;
using SkiaSharp;

namespace ShedBot.Tests.Pictures;

/// <summary>The picture, decoded and held against the numbers that it shows.</summary>
public sealed class CalibrationPlotTests
{
    /// <summary>Invented numbers of an invented club.</summary>
    private static readonly CalibrationReport Report = new(
        60,
        Point((0.1, 2, 12), (0.22, 1, 12), (0.3, 5, 12), (0.45, 4, 12), (0.62, 9, 12)),
        Point((0.35, 4, 12), (0.55, 6, 12), (0.7, 9, 12), (0.85, 9, 12), (0.96, 12, 12)));

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_EachBin_StandsWhereItsNumbersAre(PictureLook look)
    {
        using var picture = Decoded(Report, look);
        var colours = Palette.Of(look);

        Assert.Equal((1080, 1300), (picture.Width, picture.Height));
        // The square of chances begins at 150 across and 330 down, and is 820 wide.
        foreach (var (point, colour) in new[] { (Report.AfterComplaint, colours.Expected), (Report.BeforeRepair, colours.Due) })
        {
            foreach (var bin in point.Bins)
            {
                var seen = Near(picture, 150 + (bin.Said * 820), 330 + ((1 - bin.CameTrue.Value) * 820), 14, SKColor.Parse(colour));
                Assert.True(seen > 60, $"{bin}: {seen} pixels");
            }
        }
    }

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_ManyOrNoCases_StaysWithinItsEdges(PictureLook look)
    {
        foreach (var report in new[] { Report with { Cases = 1234567 }, new CalibrationReport(0, new(0, double.NaN, double.NaN, []), new(0, double.NaN, double.NaN, [])) })
        {
            using var picture = Decoded(report, look);
            for (var y = 0; y < picture.Height; y++)
            {
                Assert.Equal(SKColor.Parse(Palette.Of(look).Ground), picture.GetPixel(4, y));
                Assert.Equal(SKColor.Parse(Palette.Of(look).Ground), picture.GetPixel(picture.Width - 5, y));
            }
        }
    }

    private static SKBitmap Decoded(CalibrationReport report, PictureLook look) => SKBitmap.Decode(CalibrationPlot.Paint(report, Palette.Of(look), Face));

    private static PlainFace Face
    {
        get
        {
            var face = PlainFace.Find(PlainFace.UsualFolders) ?? throw new InvalidOperationException("These tests need a typeface such as DejaVu Sans.");
            TimelinePlot.Use(face);
            return face;
        }
    }

    private static CalibrationPoint Point(params (double Said, int True, int Of)[] bins) => new(
        bins.Sum(b => b.Of), 0.2, 0.1, [.. bins.Select(b => new CalibrationBin(b.Of, b.Said, Figure.Share(b.True, b.Of)))]);

    private static int Near(SKBitmap picture, double x, double y, int within, SKColor colour)
    {
        var seen = 0;
        for (var i = (int)x - within; i <= x + within; i++)
        {
            for (var j = (int)y - within; j <= y + within; j++)
            {
                if (picture.GetPixel(i, j) == colour) seen++;
            }
        }

        return seen;
    }
}
