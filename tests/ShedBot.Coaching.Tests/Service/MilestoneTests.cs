using ShedBot.Coaching.Service;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>What is due once after an event, at each of some distances.</summary>
public sealed class MilestoneTests
{
    private static readonly ShedBot.Knowledge.Rules.ServiceRule Slack = Task("slack").Following("new-pads", RidingDays(1), RidingDays(2));

    [Fact]
    public void Of_EventNotKnown_IsNotInThePlan() => Assert.Empty(Bike.RodeOn(May3, 3).Plan(May3.PlusDays(3), Slack, Task("screws").Following("fitted", RidingDays(1))));

    [Fact]
    public void Of_EachMilestone_ComesOnceUnderItsOwnKey()
    {
        var bike = Bike.RodeOn(May3.PlusDays(-9), 10).Mended(Noon, "new-pads");
        var waiting = bike.Only(May3, Slack);
        Assert.Equal((DueState.Soon, 0), (waiting.State, waiting.Amount.Used));

        var first = bike.Rode(May3.PlusDays(1)).Only(May3.PlusDays(1), Slack);
        Assert.Equal((DueState.Due, "1 of about 1 riding day"), (first.State, first.Amount.Words));
        Assert.EndsWith("|1 RidingDays", first.DueKey, StringComparison.Ordinal);

        bike = bike.Rode(May3.PlusDays(1)).Did(May3.PlusDays(1), "slack");
        var second = bike.Rode(May3.PlusDays(2)).Only(May3.PlusDays(2), Slack);
        Assert.Equal((DueState.Due, 2), (second.State, second.Amount.Used));
        Assert.EndsWith("|2 RidingDays", second.DueKey, StringComparison.Ordinal);

        Assert.Empty(bike.Rode(May3.PlusDays(2)).Did(May3.PlusDays(2), "slack").RodeOn(May3.PlusDays(3), 9).Plan(May3.PlusDays(20), Slack));
    }

    [Fact]
    public void Of_BothPassedUndone_IsTheLastOneAndDoingItOnceServesBoth()
    {
        var bike = Bike.Mended(Noon, "new-pads").RodeOn(May3.PlusDays(1), 2);

        Assert.EndsWith("|2 RidingDays", bike.Only(May3.PlusDays(2), Slack).DueKey, StringComparison.Ordinal);
        Assert.Empty(bike.Did(May3.PlusDays(2), "slack").Plan(May3.PlusDays(2), Slack));
    }

    [Fact]
    public void Of_DoneBeforeTheRideThatItIsFor_IsStillToCome() =>
        Assert.Equal(DueState.Due, Bike.Mended(Noon, "new-pads").Did(May3, "slack").Rode(May3.PlusDays(1)).Only(May3.PlusDays(1), Slack).State);

    [Fact]
    public void Of_DoneALittleEarly_CountsAsDone()
    {
        var rule = Task("nuts").Following("new-pads", Km(50));
        var bike = Bike.Mended(Noon, "new-pads").Rode(May3.PlusDays(1), 41);

        Assert.Empty(bike.Did(May3.PlusDays(1), "nuts").Rode(May3.PlusDays(2), 30).Plan(May3.PlusDays(2), rule));
        Assert.Single(Bike.Mended(Noon, "new-pads").Rode(May3.PlusDays(1), 39).Did(May3.PlusDays(1), "nuts").Plan(May3.PlusDays(2), rule));
    }

    [Fact]
    public void Of_EventAgain_CountsAnew()
    {
        var bike = Bike.Mended(Noon, "new-pads").RodeOn(May3.PlusDays(1), 2).Did(May3.PlusDays(2), "slack");
        var again = bike.Mended(Noon.AddDays(5), "new-pads").Rode(May3.PlusDays(6)).Only(May3.PlusDays(6), Slack);

        Assert.Equal((DueState.Due, 1), (again.State, again.Amount.Used));
        Assert.NotEqual(Bike.Mended(Noon, "new-pads").Rode(May3.PlusDays(1)).Only(May3.PlusDays(1), Slack).DueKey, again.DueKey);
    }

    [Fact]
    public void Of_FirstRideOnTheDayOfTheFitting_Counts() => Assert.Equal(
        DueState.Due, Bike.Fitted(May3).Rode(May3).Only(May3, Task("screws").Following("fitted", RidingDays(1))).State);

    [Fact]
    public void Of_FittedLongBeforeTheLogBegins_IsLeftOut()
    {
        var rule = Task("screws").Following("fitted", RidingDays(1), RidingDays(5));

        Assert.Empty(Bike.Fitted(May3.PlusDays(-15)).RodeOn(May3, 3).Plan(May3.PlusDays(3), rule));
        Assert.Single(Bike.Fitted(May3.PlusDays(-14)).RodeOn(May3, 3).Plan(May3.PlusDays(3), rule));
        Assert.Empty(Bike.Fitted(May3.PlusDays(-900)).Plan(May3, rule));
    }

    [Fact]
    public void Of_BeforeTheNextRide_IsDueAtOnceAndOverdueOnceRidden()
    {
        var rule = Task("proof").Following("new-bar", RidingDays(0));
        var bike = Bike.Rode(May3).Mended(Noon);

        var due = bike.Only(May3, rule);
        Assert.Equal((DueState.Due, "before the next ride"), (due.State, due.Amount.Words));
        Assert.Equal(DueState.Overdue, bike.Rode(May3.PlusDays(1)).Only(May3.PlusDays(1), rule).State);
        Assert.Empty(bike.Did(May3, "proof").Plan(May3, rule));
    }

    [Fact]
    public void Of_AfterAnotherTask_CountsFromIt() => Assert.Equal(
        (DueState.Due, 1), Bike.Did(May3, "cable").Rode(May3.PlusDays(1)).Only(May3.PlusDays(1), Task("slack").Following("cable", RidingDays(1))) is var i ? (i.State, i.Amount.Used) : default);

    [Fact]
    public void Of_MilestoneAndInterval_TheOneThatIsDueFirstStands()
    {
        var rule = Task("slack", Calendar(10)).Following("new-pads", RidingDays(1));
        var bike = Bike.Did(May3, "slack").Mended(Noon.AddDays(1), "new-pads");

        Assert.EndsWith("|1 RidingDays", bike.Rode(May3.PlusDays(3)).Only(May3.PlusDays(3), rule).DueKey, StringComparison.Ordinal);
        Assert.Equal("b1|slack|slack@2026-05-03", bike.Only(May3.PlusDays(10), rule).DueKey);
    }
}
