using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Service;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Tests.Logbook;

/// <summary>The timeline against the plan that it shows, with invented tasks on an invented bike.</summary>
public sealed class TimelineTests
{
    private static readonly LocalDate Today = Yard.May3;

    [Fact]
    public void Of_ATaskDoneTwiceAndDueInSomeDays_HasItsMarksOnThoseDays()
    {
        var task = Yard.Task("grease", Yard.Calendar(30));
        var line = Lay(Yard.Bike.Did(Today.PlusDays(-40)).Did(Today.PlusDays(-10)), task);
        var row = Assert.Single(line.Rows);
        // 30 days of the calendar from 23 April on: 23 May, by hand.
        Assert.Equal([(TimelineSign.Done, "2026-04-23"), (TimelineSign.Expected, "2026-05-23")], Days(line, row));
        Assert.Equal("23 May", row.When);
        Assert.Null(row.Band);
        Assert.Contains("Grease: 23 May; done 23 Apr", Assert.Single(line.Words, w => w.StartsWith("Grease", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ATaskExpectedByRiding_HasTheBandOfThePlan()
    {
        var task = Yard.Task("grease", Yard.RidingDays(10));
        var bike = Yard.Bike.RodeOn(Today.PlusDays(-30), 14, everyDays: 2).Did(Today.PlusDays(-6));
        var item = bike.Only(Today, task);
        var line = Lay(bike, task);
        var row = Assert.Single(line.Rows);
        Assert.Equal((item.Earliest, item.Latest), (Day(line, row.Band!.From), Day(line, row.Band.To)));
        Assert.False(row.Band.GoesOn);
        Assert.Equal((TimelineSign.Expected, Dates.Iso(item.Expected!.Value)), Days(line, row)[^1]);
        Assert.True(row.Band.From < row.Marks[^1].Place && row.Marks[^1].Place < row.Band.To);
    }

    [Theory]
    [InlineData(30, TimelineSign.Due, "due today")]
    [InlineData(31, TimelineSign.Due, "due since 2 May")]
    [InlineData(44, TimelineSign.Due, "due since 19 Apr")]
    [InlineData(45, TimelineSign.Overdue, "overdue since 18 Apr")]
    public void Of_ATaskThatFellDue_IsMarkedOnThatDay(int daysAgo, TimelineSign sign, string when)
    {
        // Due at 30 days of the calendar and overdue at half as much again.
        var line = Lay(Yard.Bike.Did(Today.PlusDays(-daysAgo)), Yard.Task("grease", Yard.Calendar(30)));
        var row = Assert.Single(line.Rows);
        Assert.Equal((sign, Dates.Iso(Today.PlusDays(30 - daysAgo))), Days(line, row)[^1]);
        Assert.Equal(when, row.When);
    }

    [Fact]
    public void Of_SeveralTasks_PutsTheMostPressingFirst()
    {
        var bike = Yard.Bike.Did(Today.PlusDays(-20), "a").Did(Today.PlusDays(-20), "b").Did(Today.PlusDays(-20), "c").Did(Today.PlusDays(-20), "d");
        var line = Lay(bike, Named("a", 40), Named("b", 19), Named("c", 25), Named("d", 10));
        Assert.Equal(["D", "B", "C", "A"], line.Rows.Select(r => r.Called));
    }

    [Fact]
    public void Of_MoreTasksThanFit_CountsTheRest()
    {
        var tasks = Enumerable.Range(0, 15).Select(i => Named($"t{i:D2}", 20 + i)).Append(Named("u", 5)).ToArray();
        var bike = Enumerable.Range(0, 15).Aggregate(Yard.Bike.Rode(Today.PlusDays(-2)), (b, i) => b.Did(Today.PlusDays(-3), $"t{i:D2}"));
        var line = Lay(bike, tasks);
        Assert.Equal(Timelines.MostRows, line.Rows.Length);
        Assert.Equal("3 more tasks are less pressing. 1 has no day yet, since nobody told me when it was last done.", line.Caption);
    }

    [Fact]
    public void Of_ABikeOfWhichNothingIsKnown_HasNoRowsAndSaysWhatToTell()
    {
        var line = Lay(Yard.Bike, Named("a", 40));
        Assert.Empty(line.Rows);
        Assert.StartsWith("Nothing can be dated yet.", line.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TheLookBeforeEachRide_IsNoRow() =>
        Assert.Empty(Lay(Yard.Bike.Fitted(Today), Named("a", 40) with { Every = [], BeforeEachRide = true }).Rows);

    [Fact]
    public void Of_ABreak_IsShadedFromItsFirstDayToTheDayOfRidingAgain()
    {
        var bike = Yard.Bike.Did(Today.PlusDays(-40));
        bike = bike with { Riding = bike.Riding.Break(Today.PlusDays(-30), Today.PlusDays(-5), Today, Yard.Noon).Must };
        var line = Lay(bike, Yard.Task("grease", Yard.Calendar(60)));
        var rest = Assert.Single(line.Rests);
        Assert.Equal((Today.PlusDays(-30), Today.PlusDays(-5), false), (Day(line, rest.From), Day(line, rest.To), rest.GoesOn));
        Assert.Contains("Not riding from 3 Apr 2026 till 28 Apr 2026", line.Words);
    }

    [Fact]
    public void Of_ABreakWithoutAnEnd_GoesOnToTheEdge()
    {
        var bike = Yard.Bike.Did(Today.PlusDays(-40));
        bike = bike with { Riding = bike.Riding.Break(Today, null, Today, Yard.Noon).Must };
        var line = Lay(bike, Yard.Task("grease", Yard.Calendar(30)));
        Assert.Equal((line.Today, 1, true), (line.Rests[0].From, line.Rests[0].To, line.Rests[0].GoesOn));
        Assert.Equal("due since 23 Apr, resting", line.Rows[0].When);
    }

    [Fact]
    public void Of_ABreakOfAnotherYear_IsLeftOut()
    {
        var bike = Yard.Bike.Did(Today.PlusDays(-10));
        bike = bike with { Riding = bike.Riding.Break(Today.PlusDays(-300), Today.PlusDays(-250), Today, Yard.Noon).Must };
        Assert.Empty(Lay(bike, Yard.Task("grease", Yard.Calendar(30))).Rests);
    }

    [Fact]
    public void Of_WhatLiesFurtherThanIsShown_StandsAtTheEdges()
    {
        var bike = Yard.Bike.Did(Today.PlusDays(-200)).Did(Today.PlusDays(-5), "near");
        var line = Lay(bike, Yard.Task("grease", Yard.Calendar(400)), Named("near", 10));
        var row = line.Rows[1];
        Assert.Equal([(TimelineSign.DoneEarlier, 0.0), (TimelineSign.ExpectedLater, 1.0)], row.Marks.Select(m => (m.Sign, m.Place)));
        Assert.Contains("Grease: 19 Nov; last done 15 Oct", line.Words);
    }

    [Fact]
    public void Of_NothingButWhatIsFarAway_ShowsAsManyDaysAsItNeeds()
    {
        var line = Lay(Yard.Bike.Did(Today.PlusDays(-200)), Yard.Task("grease", Yard.Calendar(400)));
        Assert.Equal([(TimelineSign.Done, "2025-10-15"), (TimelineSign.Expected, "2026-11-19")], Days(line, Assert.Single(line.Rows)));
        Assert.Equal(["1 Dec", "1 Feb", "1 Apr", "1 Jun", "1 Aug", "1 Oct"], line.Ticks.Select(t => t.Label));
    }

    [Fact]
    public void Of_ARepairThatCountsAsTheTask_IsADayOnWhichItWasDone()
    {
        var task = Yard.Task("grease", Yard.Calendar(30)) with { DoneBy = ["new-bar"] };
        var line = Lay(Yard.Bike.Mended(Yard.Noon.AddDays(-4)), task);
        Assert.Equal((TimelineSign.Done, "2026-04-29"), Days(line, line.Rows[0])[0]);
    }

    [Theory]
    [InlineData(20, "13 Apr, 20 Apr, 27 Apr, 4 May, 11 May, 18 May, 25 May")]
    [InlineData(60, "13 Apr, 27 Apr, 11 May, 25 May, 8 Jun, 22 Jun")]
    [InlineData(110, "1 May, 1 Jun, 1 Jul, 1 Aug")]
    public void Of_ATask_HasTicksThatSuitTheDaysShown(int ahead, string labels)
    {
        // 3 May 2026 is a Sunday, as the calendar on the wall says; so 4 May is a Monday.
        var line = Lay(Yard.Bike.Did(Today), Yard.Task("grease", Yard.Calendar(ahead)));
        Assert.Equal(labels, string.Join(", ", line.Ticks.Select(t => t.Label)));
        Assert.All(line.Ticks, t => Assert.Equal(t.Label, Day(line, t.Place).ToString("d MMM", null)));
    }

    [Fact]
    public void Of_ABikeWithAName_IsTitledByIt() =>
        Assert.Equal("The service of Old Puffer", Lay(Yard.Bike with { Name = "Old\nPuffer" }, Named("a", 4)).Title);

    private static ServiceRule Named(string id, double days) => Yard.Task(id, Yard.Calendar(days)) with { Called = id };

    private static Timeline Lay(BikeProfile bike, params ServiceRule[] rules) => Timelines.Of(bike, Yard.Rules(rules), Today, Yard.Lisbon);

    private static List<(TimelineSign, string)> Days(Timeline line, TimelineRow row) => [.. row.Marks.Where(m => m.Sign != TimelineSign.DoneEarlier).Select(m => (m.Sign, Dates.Iso(Day(line, m.Place))))];

    private static LocalDate Day(Timeline line, double place) => line.From.PlusDays((int)Math.Round(place * Period.DaysBetween(line.From, line.To)));
}
