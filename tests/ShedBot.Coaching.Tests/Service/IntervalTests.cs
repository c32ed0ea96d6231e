using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge.Rules;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>What is due again and again: counted, reset, whichever comes first.</summary>
public sealed class IntervalTests
{
    [Fact]
    public void Of_RidingSinceItWasDone_IsCountedAndDated()
    {
        var item = Bike.RodeOn(May3.PlusDays(-20), 20).Did(May3.PlusDays(-12)).Only(May3, Task(every: RidingDays(14)));

        Assert.Equal((11, 14), (item.Amount.Used, item.Amount.Allowed));
        Assert.Equal("11 of about 14 riding days", item.Amount.Words);
        Assert.Equal(DueState.Soon, item.State);
        Assert.InRange(item.Expected!.Value, May3.PlusDays(2), May3.PlusDays(4));
        Assert.True(item.Earliest <= item.Expected && item.Expected <= item.Latest);
        Assert.Equal("Last done on 21 Apr 2026. By your log you ride about 6.3 days a week.", item.Because);
    }

    [Theory]
    [InlineData(13, DueState.Soon)]
    [InlineData(14, DueState.Due)]
    [InlineData(20, DueState.Due)]
    [InlineData(21, DueState.Overdue)]
    public void Of_RiddenUpToTheInterval_IsDueFromThereAndOverdueAtHalfAsMuchAgain(int rides, DueState state)
    {
        var item = Bike.Did(May3).RodeOn(May3.PlusDays(1), rides).Only(May3.PlusDays(rides), Task(every: RidingDays(14)));

        Assert.Equal(state, item.State);
        if (rides >= 14) Assert.Equal((May3.PlusDays(14), May3.PlusDays(14), May3.PlusDays(14)), (item.Expected, item.Earliest, item.Latest));
    }

    [Fact]
    public void Of_DoneAgain_CountsFromThereUnderAnotherKey()
    {
        var before = Bike.Did(May3).RodeOn(May3.PlusDays(1), 14);
        var (due, reset) = (before.Only(May3.PlusDays(14), Task(every: RidingDays(14))), before.Did(May3.PlusDays(14)).Only(May3.PlusDays(14), Task(every: RidingDays(14))));

        Assert.Equal(("b1|grease|grease@2026-05-03", DueState.Due), (due.DueKey, due.State));
        Assert.Equal(("b1|grease|grease@2026-05-17", DueState.Done, 0), (reset.DueKey, reset.State, reset.Amount.Used));
    }

    [Fact]
    public void Of_RideOnTheDayItWasDone_IsNotCounted() =>
        Assert.Equal(1, Bike.Did(May3).RodeOn(May3, 2).Only(May3.PlusDays(1), Task(every: RidingDays(14))).Amount.Used);

    [Fact]
    public void Of_RepairThatCountsAsIt_ResetsIt()
    {
        var rule = Task(every: RidingDays(14)) with { DoneBy = ["new-bar"] };
        var item = Bike.RodeOn(May3.PlusDays(-20), 20).Did(May3.PlusDays(-18)).Mended(Noon.AddDays(-3)).Only(May3, rule);

        Assert.Equal(2, item.Amount.Used);
        Assert.StartsWith("b1|grease|new-bar@", item.DueKey, StringComparison.Ordinal);
        Assert.Equal(17, Bike.RodeOn(May3.PlusDays(-20), 20).Did(May3.PlusDays(-18)).Mended(Noon.AddDays(-3), "another").Only(May3, rule).Amount.Used);
    }

    [Fact]
    public void Of_SeveralIntervals_TheFirstToComeCounts()
    {
        var rule = Task(every: [RidingDays(100), Calendar(30), Km(35)]);
        var bike = Bike.Did(May3);
        for (var i = 1; i <= 3; i++) bike = bike.Rode(May3.PlusDays(i), 10);

        var byDistance = bike.Only(May3.PlusDays(3), rule);
        Assert.Equal(("30 of about 35 km", DueState.Soon), (byDistance.Amount.Words, byDistance.State));
        var byCalendar = Bike.Did(May3).Only(May3.PlusDays(30), rule);
        Assert.Equal(("30 of 30 days", DueState.Due, byDistance.DueKey), (byCalendar.Amount.Words, byCalendar.State, byCalendar.DueKey));
    }

    [Fact]
    public void Of_WetAndDustyDays_CountAsTheRuleSays()
    {
        var rule = Task(every: RidingDays(14)) with { Sooner = [new WeatherFactor("wet", 2), new WeatherFactor("dusty", 1.5)] };
        var bike = Bike.Did(May3).Rode(May3.PlusDays(1), weather: Weather.Wet).Rode(May3.PlusDays(2), weather: Weather.Dusty).Rode(May3.PlusDays(3));
        var item = bike.Only(May3.PlusDays(3), rule);

        Assert.Equal(4.5, item.Amount.Used);
        Assert.Contains("A wet day counts 2 times. A dusty day counts 1.5 times.", item.Because, StringComparison.Ordinal);
        var dry = bike.Only(May3.PlusDays(3), Task(every: RidingDays(14)));
        Assert.Equal(3, dry.Amount.Used);
        Assert.True(item.Expected < dry.Expected);
    }

    [Fact]
    public void Of_DistanceNotToldOnADay_IsReckonedFromTheOthers()
    {
        var bike = Bike.Did(May3);
        for (var i = 1; i <= 40; i++) bike = bike.Rode(May3.PlusDays(i), i == 40 ? null : 20);

        Assert.InRange(bike.Only(May3.PlusDays(40), Task(every: Km(2000))).Amount.Used, (39 * 20) + 18, (39 * 20) + 20);
    }

    [Fact]
    public void Of_HoursLogged_AreCounted() =>
        Assert.Equal(1.75, Bike.Did(May3).Rode(May3.PlusDays(1), 10, 0.5).Rode(May3.PlusDays(2), null, 1.25).Only(May3.PlusDays(2), Task(every: Hours(5))).Amount.Used);

    [Fact]
    public void Of_RidesBeforeTheDaysThatAreKept_CountByTheTotals()
    {
        var bike = Bike.Did(May3).RodeOn(May3.PlusDays(1), 700);
        var today = May3.PlusDays(700);

        Assert.Equal(299, bike.Riding.Folded!.Totals.Sum(t => t.Days));
        Assert.Equal(700, bike.Only(today, Task(every: RidingDays(5000))).Amount.Used, 6);
        Assert.Equal(500, bike.Did(May3.PlusDays(200)).Only(today, Task(every: RidingDays(5000))).Amount.Used, 6);
    }
}
