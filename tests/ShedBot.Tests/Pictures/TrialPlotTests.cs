using System.Buffers.Binary;
using System.Collections.Immutable;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Pictures;
using SkiaSharp;

namespace ShedBot.Tests.Pictures;

/// <summary>The picture of a trial, decoded and held against the report that it shows.</summary>
public sealed class TrialPlotTests
{
    private static readonly ImmutableArray<TrialBin> Bins =
        [new(8, 0.2, 0.25, 0.07, 0.59), new(8, 0.4, 0.5, 0.22, 0.78), new(8, 0.6, 0.5, 0.22, 0.78), new(8, 0.8, 0.88, 0.53, 0.98), new(8, 0.95, 1, 0.68, 1)];

    private static readonly RiderGroup Group = new(
        40, 9, [],
        [
            new Compared(Measure.Cost, 40, 20, 100, 60, -55, -25),
            new Compared(Measure.Mended, 40, 12, 0.8, 0.4, -0.6, -0.2),
            new Compared(Measure.RightCause, 40, 0, 0.5, 0.5, 0, 0),
        ],
        Bins, Bins);

    private static readonly TrialReport Report = new(
        "a", "b", new TrialScope(["x"], [], [], [], [], false, false), ReplayPart.None,
        [new WorldPart(TrialWorld.NewRight, Group, Group), new WorldPart(TrialWorld.OldRight, Group, Group)], SafetyPart.None);

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_AReport_IsAsLargeAsItsSheetAndNothingReachesTheEdges(PictureLook look)
    {
        var (png, sheet) = Painted(look);
        // Source: ISO/IEC 15948 (PNG), 11.2.2.
        Assert.Equal((1080, sheet.Height), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        using var pixels = SKBitmap.Decode(png);
        for (var y = 0; y < sheet.Height; y++)
        {
            Assert.Equal(Palette.Of(look).Ground, At(pixels, 6, y));
            Assert.Equal(Palette.Of(look).Ground, At(pixels, 1073, y));
        }
    }

    /// <summary>Better is drawn to the right of old and in its own colour and shape, worse to the left, whichever way the measure counts.</summary>
    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_BetterAndWorse_StandRightAndLeftOfTheOld(PictureLook look)
    {
        var (png, sheet) = Painted(look);
        using var pixels = SKBitmap.Decode(png);
        var (cost, mended, same) = (sheet.Lanes[0], sheet.Lanes[1], sheet.Lanes[2]);
        Assert.True(cost.X(60) > cost.X(100) + 100);
        Assert.True(mended.X(0.4) < mended.X(0.8) - 100);
        Assert.Equal(Palette.Of(look).Done, At(pixels, cost.X(60), cost.LaneAt));
        Assert.Equal(Palette.Of(look).Overdue, At(pixels, mended.X(0.4), mended.LaneAt));
        Assert.Equal(Palette.Of(look).Expected, At(pixels, same.X(0.5), same.LaneAt));
        // 40 px from each edge the lane begins and ends: 80 % of 1,000 px.
        Assert.Equal(840, mended.X(0.8), 0.01f);
        Assert.EndsWith("better", cost.Figures, StringComparison.Ordinal);
        Assert.EndsWith("both", same.Figures, StringComparison.Ordinal);
    }

    [Fact]
    public void Paint_WithoutATypeface_IsNothing()
    {
        using var temp = new TempFolder();
        Assert.Null(new TrialPictures([temp.Path], NullLogger.Instance).Paint(Report, PictureLook.Dark));
    }

    [Fact]
    public void Paint_WhereThePaintingBreaks_IsNothing() =>
        Assert.Null(new TrialPictures(PlainFace.UsualFolders, NullLogger.Instance).Paint(Report with { Worlds = default }, PictureLook.Dark));

    /// <summary>The pictures of the docs, of the report that stands beside them. With SHEDBOT_APPROVE=1 they are painted anew.</summary>
    [Theory]
    [InlineData("trial-dark.png", PictureLook.Dark)]
    [InlineData("trial-light.png", PictureLook.Light)]
    public void Pictures_OfTheDocs_AreThereAndOfTheSizeThatIsPainted(string name, PictureLook look)
    {
        var folder = Path.Combine(Repository.Root, "docs", "pictures");
        var report = TrialReportJson.Read(File.ReadAllText(Path.Combine(folder, "trial.json")));
        var png = new TrialPictures(PlainFace.UsualFolders, NullLogger.Instance).Paint(report, look)!.Value;
        var path = Path.Combine(folder, name);
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") File.WriteAllBytes(path, [.. png]);
        // Letters differ a little from machine to machine, so only the width is held.
        Assert.Equal(BinaryPrimitives.ReadInt32BigEndian(png.AsSpan()[16..]), BinaryPrimitives.ReadInt32BigEndian(File.ReadAllBytes(path).AsSpan(16)));
    }

    private static (byte[] Png, TrialSheet Sheet) Painted(PictureLook look)
    {
        var face = PlainFace.Find(PlainFace.UsualFolders) ?? throw new InvalidOperationException("These tests need a typeface such as DejaVu Sans.");
        TimelinePlot.Use(face);
        return (TrialPlot.Paint(Report, Palette.Of(look), face), TrialPlot.Lay(Report, face));
    }

    private static string At(SKBitmap pixels, float x, float y)
    {
        var pixel = pixels.GetPixel((int)MathF.Round(x), (int)MathF.Round(y));
        return $"#{pixel.Red:x2}{pixel.Green:x2}{pixel.Blue:x2}";
    }
}
