using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;

namespace ShedBot.Coaching.Tests.Logbook;

/// <summary>The words of a timeline tell what its picture shows: under the shipped rules, on many days of an invented rider's first half year.</summary>
public sealed class TimelineWordsTests
{
    public static TheoryData<int> Weeks => [.. Enumerable.Range(0, 26)];

    [Theory]
    [MemberData(nameof(Weeks))]
    public void Words_OfEachRow_NameTheDaysOfItsMarks(int week)
    {
        var line = Lay(week);
        Assert.NotEmpty(line.Rows);
        foreach (var row in line.Rows)
        {
            var words = Assert.Single(line.Words, w => w.StartsWith(row.Called + ": ", StringComparison.Ordinal));
            Assert.Contains(row.When, words, StringComparison.Ordinal);
            foreach (var mark in row.Marks)
            {
                if (mark.Sign == TimelineSign.Done && row.Marks.Count(m => m.Sign == TimelineSign.Done) > 3) continue;
                if (mark.Sign is TimelineSign.DoneEarlier or TimelineSign.ExpectedLater || mark.Place is 0 or 1 || row.When == "before the next ride") continue;
                var day = Day(line, mark.Place);
                Assert.Contains(day == Today(week) && mark.Sign == TimelineSign.Due ? "due today" : day.ToString("d MMM", null), words, StringComparison.Ordinal);
            }

            Assert.Equal(row.Marks.Any(m => m.Sign == TimelineSign.Overdue), words.Contains("overdue", StringComparison.Ordinal));
        }

        Assert.Equal(line.Rows.Length + line.Rests.Length + 1, line.Words.Length);
    }

    [Theory]
    [MemberData(nameof(Weeks))]
    public void Describe_WithinThePlatformsRoom_TellsAllOrSaysWhereTheRestIs(int week)
    {
        var line = Lay(week);
        var (words, whole) = TimelineCards.Describe(line, 1024);
        Assert.InRange(words.Length, 1, 1024);
        Assert.Equal(whole, line.Words.All(w => words.Contains(w, StringComparison.Ordinal)));
        Assert.Equal(!whole, words.EndsWith("The rest is told below the picture.", StringComparison.Ordinal));
        Assert.Contains(line.Words[1], words, StringComparison.Ordinal);
    }

    [Fact]
    public void Describe_InLittleRoom_KeepsTheMostPressing()
    {
        var line = Lay(20);
        var (words, whole) = TimelineCards.Describe(line, 250);
        Assert.False(whole);
        Assert.InRange(words.Length, 1, 250);
        Assert.Contains(line.Rows[0].Called, words, StringComparison.Ordinal);
        Assert.DoesNotContain(line.Rows[^1].Called, words, StringComparison.Ordinal);
    }

    [Fact]
    public void Whole_OfATimeline_HasEveryWordOfIt()
    {
        var line = Lay(8);
        var card = TimelineCards.Whole(line);
        Assert.Equal(line.Words, Assert.IsType<ListBlock>(card.Blocks[0]).Items);
        Assert.Equal(line.Caption, Assert.IsType<TextBlock>(card.Blocks[1]).Text);
    }

    [Theory]
    [InlineData(null, PictureLook.Dark)]
    [InlineData(" Dark", PictureLook.Dark)]
    [InlineData("light", PictureLook.Light)]
    public void Timeline_OfAForm_HasTheLookThatWasChosen(string? typed, PictureLook look) => Assert.Equal(new ShowTimeline(look), BikeForms.Timeline(typed).Value);

    [Fact]
    public void Timeline_OfAFormWithAnotherLook_IsRefused() => Assert.Equal("look", BikeForms.Timeline("pink").Refused?.Code);

    private static LocalDate Today(int week) => Bench.Today.PlusDays(3).PlusWeeks(week);

    /// <summary>Fitted on 1 May, ridden two days of three, one task done every second day; not riding for three weeks of July.</summary>
    private static Timeline Lay(int week)
    {
        var (start, rest) = (Bench.Today, new LocalDate(2026, 7, 1));
        var bike = Fitting.Set(Bench.Bike, start, start, Bench.Now, "told").Must;
        var tasks = Bench.Knowledge.Service.Values.Where(r => !r.BeforeEachRide).Select(r => r.Id).ToList();
        for (var day = start; day < Today(week); day = day.PlusDays(1))
        {
            if (day == rest) bike = bike with { Riding = bike.Riding.Break(rest, rest.PlusWeeks(3), day, Bench.Now).Must };
            if (day >= rest && day < rest.PlusWeeks(3)) continue;
            var since = Period.DaysBetween(start, day);
            if (since % 3 != 0) bike = bike with { Riding = bike.Riding.Log(new RiddenDay(day, 10, null, Weather.Dry), day, null, Bench.Now).Must };
            if (since % 2 == 0) bike = bike with { Done = bike.Done.Add(new ServiceDone(tasks[since / 2 % 20], day, Bench.Now, "told", null)) };
        }

        return Timelines.Of(bike, Bench.Knowledge, Today(week), DateTimeZone.Utc);
    }

    private static LocalDate Day(Timeline line, double place) => line.From.PlusDays((int)Math.Round(place * Period.DaysBetween(line.From, line.To)));
}
