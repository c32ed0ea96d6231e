using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Logbook;
using ShedBot.Pictures;

namespace ShedBot.Tests.Pictures;

/// <summary>The layout, with letters that are all half as wide as they are tall.</summary>
public sealed class TimelineSheetTests
{
    [Fact]
    public void Sizes_OfAllLetters_ReadOnATelephone() =>
        // A third as wide there: 360 instead of 1,080. Ten pixels are what small print has on a telephone; common practice, no source.
        Assert.All([TimelineSheet.Heading, TimelineSheet.Words, TimelineSheet.Small], size => Assert.True(size / 3 >= 10));

    [Fact]
    public void Of_ANameAndADayThatFit_StandOnOneLine()
    {
        var row = Assert.Single(Lay(Row("The spokes", "14 May")).Rows);
        Assert.Equal(row.NameAt, row.WhenAt);
    }

    [Fact]
    public void Of_ANameAndADayThatDoNotFit_StandBelowEachOther()
    {
        var row = Assert.Single(Lay(Row(new string('n', 50), "31 March (29 March to 14 April)")).Rows);
        Assert.Equal(row.NameAt + TimelineSheet.Line, row.WhenAt);
    }

    [Fact]
    public void Of_AVeryLongName_IsWrappedAndNeverCut()
    {
        var name = string.Join(' ', Enumerable.Repeat("sprocket", 12));
        var row = Assert.Single(Lay(Row(name, "14 May")).Rows);
        Assert.True(row.Names.Length > 1);
        Assert.Equal(name, string.Join(' ', row.Names));
        Assert.All(row.Names, n => Assert.True(Half(n, TimelineSheet.Words) <= 1000));
    }

    [Fact]
    public void Of_SeveralRows_KeepsLanesAndWordsApart()
    {
        var sheet = Lay(Row(new string('n', 50), new string('w', 30)), Row("a", "b"), Row("c", "d"));
        foreach (var (row, next) in sheet.Rows.Zip(sheet.Rows.Skip(1)))
        {
            Assert.True(row.LaneAt - (TimelineSheet.Lane / 2) >= row.WhenAt + (TimelineSheet.Line / 2));
            Assert.True(next.NameAt - (TimelineSheet.Line / 2) >= row.LaneAt + (TimelineSheet.Lane / 2));
        }

        Assert.True(sheet.Axes.Below + (TimelineSheet.Line / 2) < sheet.Height);
    }

    [Fact]
    public void Of_ALegend_NamesOnlyWhatIsShown()
    {
        var row = Row("a", "b") with { Marks = [new TimelineMark(TimelineSign.Done, 0.2)], Band = new TimelineStretch(0.6, 0.8, false) };
        Assert.Equal(["done", "within these days 8 times in 10"], Lay(row).Legend.Select(e => e.Words));
    }

    [Fact]
    public void Of_ABandThatGoesOn_ExplainsTheArrow()
    {
        var row = Row("a", "b") with { Band = new TimelineStretch(0.6, 1, true) };
        Assert.Contains(Lay(row).Legend, e => e.Words == "later");
    }

    [Theory]
    [InlineData("The service of Old Puffer", "The service of Old Puffer")]
    [InlineData("The service of Grünspecht – 2", "The service of Grünspecht – 2")]
    [InlineData("The service of 🚲", "The service of your bike")]
    public void Of_ANameInLettersThatFewTypefacesHave_GivesThePictureAPlainTitle(string title, string shown) =>
        Assert.Equal(shown, string.Join(' ', TimelineSheet.Of(Line() with { Title = title }, Half).Title));

    private static TimelineSheet Lay(params TimelineRow[] rows) => TimelineSheet.Of(Line() with { Rows = [.. rows] }, Half);

    private static TimelineRow Row(string called, string when) => new(called, when, [], null);

    private static Timeline Line() => new("The service of your bike", "1 Mar 2026 to 1 May 2026", new LocalDate(2026, 3, 1), new LocalDate(2026, 5, 1), 0.5, [], [], [], "", ImmutableArray<string>.Empty);

    private static float Half(string text, float size) => text.Length * size / 2;
}
