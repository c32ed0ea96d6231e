using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>What is said while little is known, and while nobody rides.</summary>
public sealed class UnknownTests
{
    private static readonly ShedBot.Knowledge.Rules.ServiceRule Grease = Task(every: RidingDays(14));

    [Fact]
    public void Of_NothingKnown_IsNotYetKnown()
    {
        var item = Bike.Only(May3, Grease);

        Assert.Equal((DueState.NotYetKnown, null, null), (item.State, item.Expected, item.Latest));
        Assert.Contains("I don't know yet how much you ride.", item.Because, StringComparison.Ordinal);
        Assert.Equal(DueState.NotYetKnown, Bike.Did(May3).Only(May3.PlusDays(60), Grease).State);
    }

    [Fact]
    public void Of_NeverDoneAndNotNew_IsNotYetKnownUntilTheKnownRidesAloneMakeItDue()
    {
        var early = Bike.RodeOn(May3, 13).Only(May3.PlusDays(13), Grease);
        Assert.Equal((DueState.NotYetKnown, "b1|grease|start"), (early.State, early.DueKey));
        Assert.StartsWith("Nobody has told me when it was last done, so I count from 3 May 2026", early.Because, StringComparison.Ordinal);

        var due = Bike.RodeOn(May3, 14).Only(May3.PlusDays(13), Grease);
        Assert.Equal((DueState.Due, early.DueKey), (due.State, due.DueKey));
    }

    [Fact]
    public void Of_NeverDoneOnANewKit_CountsFromTheFitting()
    {
        var item = Bike.Fitted(May3).RodeOn(May3.PlusDays(2), 10).Only(May3.PlusDays(12), Grease);

        Assert.Equal((DueState.Soon, "b1|grease|start", 10), (item.State, item.DueKey, item.Amount.Used));
        Assert.StartsWith("Fitted on 3 May 2026.", item.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AnotherKitFitted_CountsFromItsFitting()
    {
        var item = Bike.RodeOn(May3, 30).Did(May3.PlusDays(5)).Fitted(May3.PlusDays(20)).Only(May3.PlusDays(29), Grease);

        Assert.Equal(("b1|grease|fitted@2026-05-23", 10), (item.DueKey, item.Amount.Used));
    }

    [Fact]
    public void Of_EarlierRideLoggedLate_ChangesNoKey()
    {
        var bike = Bike.RodeOn(May3, 3);

        Assert.Equal(bike.Only(May3.PlusDays(3), Grease).DueKey, bike.Rode(May3.PlusDays(-7)).Only(May3.PlusDays(3), Grease).DueKey);
    }

    [Fact]
    public void Of_PaceStatedAndNothingLogged_ReckonsByThePace()
    {
        var item = Bike.Says(4, May3).Did(May3).Only(May3.PlusDays(22), Grease);

        Assert.Equal(12, item.Amount.Used, 6);
        Assert.Equal("about 12 of 14 riding days", item.Amount.Words);
        Assert.Equal(DueState.Soon, item.State);
        Assert.Contains("You said about 4 days a week; I go mostly by that.", item.Because, StringComparison.Ordinal);
        Assert.Equal(DueState.Due, Bike.Says(4, May3).Did(May3).Only(May3.PlusDays(26), Grease).State);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(21)]
    public void Of_PaceStatedAndARideLoggedLater_LosesNothingOfWhatWasReckoned(int later)
    {
        var bike = Bike.Says(4, May3).Did(May3);
        var today = May3.PlusDays(later + 1);

        var item = bike.Rode(May3.PlusDays(later)).Only(today, Grease);
        Assert.True(item.Amount.Used >= bike.Only(today, Grease).Amount.Used);
        Assert.True(item.Amount.Estimated);
    }

    /// <summary>Of riders who ride on 4 days of 7 fewer than 1 in 50 leave out 5 days, and 7 is the least that is taken for silence.</summary>
    [Theory]
    [InlineData(8, 2, false)]
    [InlineData(9, 2 + (8 * 4 / 7.0), true)]
    public void Of_PaceStatedAndALongGap_ReckonsTheGapByThePace(int later, double used, bool estimated)
    {
        var item = Bike.Did(May3.PlusDays(-1)).Rode(May3).Says(4, May3).Rode(May3.PlusDays(later)).Only(May3.PlusDays(later + 1), Grease);

        Assert.Equal(estimated, item.Amount.Estimated);
        Assert.InRange(item.Amount.Used, used - 0.5, used + 0.5);
    }

    [Fact]
    public void Of_OnABreak_WaitsAndIsExpectedAfterIt()
    {
        var ridden = Bike.Did(May3).RodeOn(May3.PlusDays(1), 10);
        var today = May3.PlusDays(11);
        var till = ridden with { Riding = ridden.Riding.Break(today, today.PlusDays(60), today, Noon).Must };
        var open = ridden with { Riding = ridden.Riding.Break(today, null, today, Noon).Must };

        var item = till.Only(today, Grease);
        Assert.Equal(DueState.Waiting, item.State);
        Assert.True(item.Expected > today.PlusDays(60));
        Assert.Contains("You are not riding till 13 Jul 2026.", item.Because, StringComparison.Ordinal);
        Assert.Equal((DueState.Waiting, null), (open.Only(today, Grease).State, open.Only(today, Grease).Expected));
        Assert.Equal(DueState.Waiting, open.Only(today.PlusDays(400), Task(every: Calendar(30))).State);
        Assert.Equal(11, open.Rode(today.PlusDays(90)).Only(today.PlusDays(90), Grease).Amount.Used);
    }

    [Fact]
    public void Of_LongSilenceWithoutAStatedPace_WaitsUnlessDueByTheLog()
    {
        var bike = Bike.Did(May3).RodeOn(May3.PlusDays(1), 13);

        var quiet = bike.Only(May3.PlusDays(60), Grease);
        Assert.Equal((DueState.Waiting, null), (quiet.State, quiet.Expected));
        Assert.Contains("No ride is logged since 16 May 2026", quiet.Because, StringComparison.Ordinal);
        Assert.Equal(DueState.Due, bike.Rode(May3.PlusDays(14)).Only(May3.PlusDays(60), Grease).State);
        Assert.Equal(DueState.Overdue, bike.Only(May3.PlusDays(60), Task(every: Calendar(30))).State);
    }

    [Fact]
    public void Of_ClockThatWentBack_CountsWhatIsLogged()
    {
        var bike = Bike.Did(May3).RodeOn(May3.PlusDays(1), 14);

        Assert.Equal((DueState.Due, 14), bike.Only(May3.PlusDays(-30), Grease) is var i ? (i.State, i.Amount.Used) : default);
    }

    [Theory]
    [InlineData("old", 10, 0)]
    [InlineData("newish", 10, 1)]
    [InlineData("old", 101, 1)]
    [InlineData(null, 0, 1)]
    public void Of_ForSomeBikesOnly_LeavesOutThoseKnownToBeOthers(string? age, int daysAgo, int items)
    {
        // The fact 'age' of the sample rules keeps for 100 days.
        var rule = Grease with { OnlyIf = [new ShedBot.Knowledge.Rules.ServiceCondition("age", ["newish"])] };
        var bike = age is null ? Bike : Bike with { Facts = Bike.Facts.Add("age", new ShedBot.Coaching.Bikes.BikeFact(age, Noon.AddDays(-daysAgo), "told")) };

        Assert.Equal(items, bike.Plan(May3, rule).Length);
    }

    [Fact]
    public void Of_BeforeEachRide_StandsLastAndIsNeverDue()
    {
        var plan = Bike.Did(May3).RodeOn(May3.PlusDays(1), 20).Plan(May3.PlusDays(20), Task("a-look") with { BeforeEachRide = true }, Grease, Task("other", RidingDays(30)));

        Assert.Equal(["grease", "other", "a-look"], plan.Select(i => i.Rule.Id));
        Assert.Equal((DueState.Done, null), (plan[2].State, plan[2].Expected));
    }
}
