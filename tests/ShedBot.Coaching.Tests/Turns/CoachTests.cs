using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

public sealed class CoachTests
{
    [Fact]
    public void Take_ClearComplaint_AsksTheCheapestSafeCheckFirst()
    {
        var talk = new Talk().Say("hello, no water comes out of my pump");
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
        Assert.Equal(CasePhase.Asking, talk.Case.Phase);
        Assert.Contains("no water comes", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_AnswerThatSettlesIt_ShowsCauseReasonsAndRepairAfterTheSafetyQuestion()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut");
        Assert.Equal(Pump.Knowledge.Triage.Ask, talk.Last.Title);
        talk.Pick("Yes, all of it");
        Assert.StartsWith("Very likely: the tap at the tank is shut", talk.Last.Title, StringComparison.Ordinal);
        Assert.Contains("What speaks for it", talk.AllText, StringComparison.Ordinal);
        Assert.Contains("In this order", talk.AllText, StringComparison.Ordinal);
        Assert.Equal(CasePhase.Repairing, talk.Case.Phase);
    }

    [Fact]
    public void Take_RepairHeld_ClosesLogsTheWorkAndTellsPrevention()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Pick("Done").Pick("It holds");
        Assert.Equal(CasePhase.Solved, talk.Case.Phase);
        Assert.Equal("open-tap", Assert.Single(talk.Bike.Work).Repair);
        Assert.Equal("open-tap", talk.Outcome!.Repair);
        Assert.Equal("tap-shut", talk.Outcome.Causes[0].Fault);
        Assert.Contains("Tie a label to the tap", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_RepairWithoutEffect_FeedsBackAndGoesOn()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Pick("Done").Pick("No change");
        Assert.False(talk.Case.IsClosed);
        Assert.Contains(talk.Case.Entries, e => e is { Kind: EntryKind.RepairFailed, Subject: "open-tap" });
        Assert.DoesNotContain("the tap at the tank is shut", talk.Last.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_SameEventTwice_IsAnsweredOnce()
    {
        var talk = new Talk().Say("no water comes out");
        var again = Pump.Coach.Take(talk.Case, talk.Bike, new MemberSaid("e1", "no water comes out"), Pump.Noon);
        Assert.Same(talk.Case, again.Case);
        Assert.Empty(again.Say);
    }

    [Fact]
    public void Take_SameTurnTwice_GivesTheSameAnswer()
    {
        var talk = new Talk().Say("no water comes out");
        var option = talk.Last.Options[0].Id;
        var (a, b) = (One(), One());
        Assert.Equal(a.Say.Select(Talk.Text), b.Say.Select(Talk.Text));
        Assert.Equal(a.Case.Entries.AsEnumerable(), b.Case.Entries);

        Turn One() => Pump.Coach.Take(talk.Case, talk.Bike, new MemberChose("x", option), Pump.Noon);
    }

    [Theory]
    [InlineData("made up")]
    [InlineData("7/")]
    [InlineData("/state:shut")]
    [InlineData("99/state:shut")]
    public void Take_OptionThatWasNeverOffered_ChangesNothingAndShowsTheQuestionAgain(string id)
    {
        var talk = new Talk().Say("no water comes out");
        var entries = talk.Case.Entries;
        talk.PickId(id);
        Assert.Equal(entries.AsEnumerable(), talk.Case.Entries);
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
    }

    [Fact]
    public void Take_OptionOfAnEarlierQuestion_IsToldLateAndChangesNothing()
    {
        var talk = new Talk().Say("no water comes out");
        var old = talk.Last.Options[1].Id;
        talk.Pick("It is open");
        var entries = talk.Case.Entries;
        talk.PickId(old);
        Assert.Equal(entries.AsEnumerable(), talk.Case.Entries);
        Assert.Equal("That question is over", talk.Said[0].Title);
    }

    [Fact]
    public void Take_StopRidingFinding_EndsTheCoachingThere()
    {
        var talk = UntilTheWheel().Pick("It is cracked");
        Assert.Equal(CasePhase.Stopped, talk.Case.Phase);
        Assert.Contains("A cracked wheel can fly apart", talk.AllText, StringComparison.Ordinal);
        Assert.Equal(CasePhase.Stopped, talk.Outcome!.Phase);
    }

    [Fact]
    public void Take_EmergencyInWords_ComesBeforeEverything()
    {
        var talk = new Talk().Say("no water comes out and I got an electric shock from it");
        Assert.Equal(CasePhase.Stopped, talk.Case.Phase);
        Assert.Contains("DANGER", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_EmergencyThatPasses_GoesOnWhenAllAreSafe()
    {
        var talk = new Talk().Say("no water comes out").Say("smoke comes out of the pump");
        Assert.Contains("WARNING", talk.AllText, StringComparison.Ordinal);
        talk.Pick("Everybody is safe");
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
    }

    [Fact]
    public void Take_EmergencyPutOnceMore_IsShownInFull()
    {
        var talk = new Talk().Say("smoke comes out of the pump");
        var first = talk.Last;
        talk.Say("why do you ask?");
        Assert.Contains("can hurt somebody", talk.AllText, StringComparison.Ordinal);
        Assert.False(talk.Last.Repeated);
        Assert.NotEmpty(talk.Last.Blocks);
        Assert.Equal(Talk.Text(first), Talk.Text(talk.Last));
    }

    [Fact]
    public void Take_EmergencyAndComplaintInOneMessage_KeepsTheComplaint()
    {
        var talk = new Talk().Say("no water comes out and smoke comes out of the pump");
        Assert.Contains("WARNING", talk.AllText, StringComparison.Ordinal);
        talk.Pick("Everybody is safe");
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.Complaint, Subject: "no-water" });
        Assert.Equal(CasePhase.Asking, talk.Case.Phase);
    }

    [Fact]
    public void Take_WordsInAClosedCase_OpenANewOne()
    {
        var talk = new Talk().Say("no water comes out").Say("forget it");
        Assert.Equal(CasePhase.Left, talk.Case.Phase);
        Assert.True(talk.Say("it hums very loud").LastTurn.OpensNew);
    }

    [Fact]
    public void Take_SolvedTroubleComesBack_GoesOnInTheSameCase()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Pick("Done").Pick("It holds").Pick("It came back");
        Assert.False(talk.Case.IsClosed);
        Assert.Null(talk.Case.ClosedAt);
        Assert.Contains(talk.Case.Entries, e => e.Kind == EntryKind.CameBack);
    }

    /// <summary>Answers 'normal' until the lid is off and the wheel is asked for.</summary>
    private static Talk UntilTheWheel()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Pick("Yes, all of it");
        for (var i = 0; i < 5 && talk.Last.Title != "What does the wheel inside look like?"; i++) talk.Pick(talk.Last.Options[0].Label);
        Assert.Equal("What does the wheel inside look like?", talk.Last.Title);
        return talk;
    }
}
