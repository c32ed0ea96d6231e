using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Logbook;
using ShedBot.Pictures;

namespace ShedBot.Tests.Pictures;

/// <summary>The picture, decoded and held against the timeline that it shows.</summary>
public sealed class TimelinePlotTests
{
    public static TheoryData<string, PictureLook> Samples
    {
        get
        {
            var all = new TheoryData<string, PictureLook>();
            foreach (var name in new[] { "new", "running in", "a year old", "resting", "long names" })
            {
                all.Add(name, PictureLook.Dark);
                all.Add(name, PictureLook.Light);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Paint_ABike_IsAsLargeAsItsSheetOnASolidGround(string name, PictureLook look)
    {
        var line = Bikes.Lay(Sample(name));
        using var painted = Painted.Of(line, look);
        Assert.Equal((1080, painted.Sheet.Height), painted.Size);
        Assert.True(painted.IsOpaque);
        Assert.InRange(painted.Sheet.Height, 600, 2400);
        // Nothing reaches the edges: no word is cut off.
        for (var y = 0; y < painted.Sheet.Height; y++)
        {
            Assert.Equal(Palette.Of(look).Ground, painted.At(6, y));
            Assert.Equal(Palette.Of(look).Ground, painted.At(1073, y));
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Paint_EachMark_StandsAtItsDayInItsColour(string name, PictureLook look)
    {
        var line = Bikes.Lay(Sample(name));
        using var painted = Painted.Of(line, look);
        var marks = 0;
        foreach (var row in painted.Sheet.Rows)
        {
            foreach (var mark in row.Row.Marks)
            {
                // Margins of 40 leave 1,000 pixels for the days. A later mark may lie over an earlier one, but not over all of it.
                var x = 40 + (float)(mark.Place * 1000);
                var seen = painted.Count(x, row.LaneAt, 13, Palette.Of(look).Of(mark.Sign));
                Assert.True(seen > 60, $"{row.Row.Called}, {mark}: {seen} pixels");
                marks++;
            }
        }

        Assert.True(marks >= 8);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Paint_Today_IsALineInEveryRow(string name, PictureLook look)
    {
        var line = Bikes.Lay(Sample(name));
        using var painted = Painted.Of(line, look);
        var x = 40 + (float)(line.Today * 1000);
        Assert.All(painted.Sheet.Rows, r => Assert.Equal(Palette.Of(look).Ink, painted.At(x, r.LaneAt - 24)));
    }

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_ABreak_IsStripedAndNotPlain(PictureLook look)
    {
        var line = Bikes.Lay(Bikes.YearOld);
        using var painted = Painted.Of(line, look);
        var rest = Assert.Single(line.Rests);
        var (colours, middle) = (Palette.Of(look), 40 + (float)((rest.From + rest.To) * 500));
        foreach (var row in painted.Sheet.Rows)
        {
            Assert.True(painted.Count(middle, row.LaneAt, 20, colours.Ground) > 100);
            Assert.True(painted.Count(middle, row.LaneAt, 20, colours.Rest) > 100);
            Assert.Equal(0, painted.Count(40 + (float)(rest.To * 1000) + 30, row.LaneAt, 20, colours.Rest));
        }
    }

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Paint_ABand_HasItsSidesWhereThePlanHasThem(PictureLook look)
    {
        var line = Bikes.Lay(Bikes.New);
        using var painted = Painted.Of(line, look);
        var wide = painted.Sheet.Rows.Where(r => r.Row.Band is { GoesOn: false } b && b.To - b.From > 0.1).ToList();
        Assert.NotEmpty(wide);
        foreach (var row in wide)
        {
            foreach (var side in new[] { row.Row.Band!.From, row.Row.Band.To })
                Assert.Equal(Palette.Of(look).Expected, painted.At(40 + (float)(side * 1000), row.LaneAt - 12));
        }
    }

    /// <summary>Told apart without any colour: the shapes of the signs differ by a good part of their pixels.</summary>
    [Fact]
    public void Paint_TheSignsOfTheLegend_HaveShapesOfTheirOwn()
    {
        var masks = new Dictionary<LegendSign, bool[]>();
        foreach (var bike in new[] { Bikes.YearOld, Bikes.New, Bikes.LongAgo })
        {
            using var painted = Painted.Of(Bikes.Lay(bike), PictureLook.Dark);
            foreach (var entry in painted.Sheet.Legend) masks[entry.Sign] = painted.Mask(entry.SignX, entry.Y, 21, Palette.Dark.Ground);
        }

        Assert.Equal(Enum.GetValues<TimelineSign>().Length + 2, masks.Count);
        foreach (var (one, other) in from a in masks from b in masks where a.Key.GetHashCode() < b.Key.GetHashCode() select (a, b))
        {
            var (differ, larger) = (one.Value.Zip(other.Value, (p, q) => p != q).Count(d => d), Math.Max(one.Value.Count(p => p), other.Value.Count(p => p)));
            Assert.True(differ > 0.15 * larger, $"{one.Key} and {other.Key}: {differ} of {larger} pixels");
        }
    }

    [Fact]
    public void Paint_TheSameTwice_IsTheSameFile()
    {
        using var one = Painted.Of(Bikes.Lay(Bikes.New), PictureLook.Dark);
        using var other = Painted.Of(Bikes.Lay(Bikes.New), PictureLook.Dark);
        Assert.Equal(one.Png, other.Png);
    }

    private static BikeProfile Sample(string name) => name switch
    {
        "new" => Bikes.New,
        "running in" => Bikes.RunningIn,
        "a year old" => Bikes.YearOld,
        "resting" => Bikes.Resting,
        _ => Bikes.New with { Name = "The Extraordinarily Long-Winded Wanderer of the West" },
    };
}
