using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

public sealed class RepairTalkTests
{
    [Theory]
    [InlineData("nope cant do it")]
    [InlineData("i can't do this")]
    public void Say_CannotDoTheRepair_IsARefusal(string words)
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Say(words);
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.RepairRefused, Subject: "open-tap" });
    }

    /// <summary>Whoever says how it goes before saying that it is done is told what to say, not to pick an answer that is not there.</summary>
    [Theory]
    [InlineData("still no water", "say 'done'")]
    [InlineData("no water comes out", "say 'done'")]
    public void Say_HowItGoesWhileTheRepairIsOpen_IsToldHowItGoesOn(string words, string told)
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Say(words);
        Assert.Contains(told, Talk.Text(talk.Said[0]), StringComparison.Ordinal);
        Assert.Equal(CasePhase.Repairing, talk.Case.Phase);
    }

    [Fact]
    public void StepByStep_EachStep_IsShownInOrderWithItsNoteAndBack()
    {
        var talk = AtTheHose().Pick("One step at a time");
        Assert.StartsWith("Step 1 of 2", talk.Last.Title, StringComparison.Ordinal);
        Assert.Contains("CAUTION", talk.AllText, StringComparison.Ordinal);
        talk.Pick("Done, next");
        Assert.Contains("It should stay round by itself.", talk.AllText, StringComparison.Ordinal);
        talk.Pick("Back");
        Assert.StartsWith("Step 1 of 2", talk.Last.Title, StringComparison.Ordinal);
        talk.Pick("Done, next").Pick("Done, that was the last one");
        Assert.Equal(CasePhase.Proving, talk.Case.Phase);
    }

    [Fact]
    public void CannotDoIt_TheRepair_IsNotOfferedAgain()
    {
        var talk = AtTheHose().Pick("I can't do this one");
        Assert.Contains(talk.Case.Entries, e => e is { Kind: EntryKind.RepairRefused, Subject: "straighten-hose" });
        Assert.NotEqual("straighten-hose", talk.Case.Open.Subject);
    }

    [Fact]
    public void SameRepairFailedTwice_IsHandedOverWithASummary()
    {
        var talk = AtTheHose().Pick("Done").Pick("No change");
        for (var i = 0; i < 12 && !talk.Case.IsClosed; i++)
        {
            var options = talk.Last.Options;
            talk.PickId((options.FirstOrDefault(o => o.Id.EndsWith(OptionId.NoChange, StringComparison.Ordinal)) ?? options[0]).Id);
        }

        Assert.Equal(CasePhase.HandedOver, talk.Case.Phase);
        Assert.Contains("In the rider's words: \"no water comes out\"", talk.AllText, StringComparison.Ordinal);
        Assert.Contains("Tried", talk.AllText, StringComparison.Ordinal);
        Assert.Contains("Straighten the hose: no change", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void WantsAHelper_IsHandedOverAtOnce()
    {
        var talk = AtTheHose().Pick("I'd rather have a helper");
        Assert.Equal(CasePhase.HandedOver, talk.Case.Phase);
        Assert.Contains("Told and checked", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void CoverShut_TheFirstLookBehindIt_TellsHowToOpenItAndTheSecondDoesNot()
    {
        var talk = AtTheLid();
        Assert.Contains("First take off the lid", talk.AllText, StringComparison.Ordinal);
        var first = talk.Case.Open.Subject;
        talk.Pick(talk.Last.Options[0].Label);
        for (var i = 0; i < 4 && talk.Case.Open.Subject is not ("turn-shaft" or "look-wheel"); i++) talk.Pick(talk.Last.Options[0].Label);
        Assert.NotEqual(first, talk.Case.Open.Subject);
        Assert.Contains(talk.Case.Open.Subject, (string[])["turn-shaft", "look-wheel"]);
        Assert.DoesNotContain("First take off the lid", talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void CoverCannotBeOpened_NothingBehindItIsAskedAgain()
    {
        var talk = AtTheLid().Pick("Can't do that now");
        Assert.Contains(talk.Case.Entries, e => e is { Kind: EntryKind.Cannot, Value: "lid" });
        for (var i = 0; i < 6 && !talk.Case.IsClosed; i++)
        {
            Assert.DoesNotContain(talk.Case.Open.Subject, (string[])["turn-shaft", "look-wheel"]);
            talk.Pick(talk.Last.Options[0].Label);
        }
    }

    /// <summary>Answers 'normal' until something behind the lid is asked for.</summary>
    private static Talk AtTheLid()
    {
        var talk = new Talk().Say("it hums very loud");
        for (var i = 0; i < 6 && talk.Case.Open.Subject is not ("turn-shaft" or "look-wheel"); i++) talk.Pick(talk.Last.Options[0].Label);
        Assert.Contains(talk.Case.Open.Subject, (string[])["turn-shaft", "look-wheel"]);
        return talk;
    }

    private static Talk AtTheHose()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Pick("Yes, all of it").Pick("It has a kink");
        Assert.Equal(CasePhase.Repairing, talk.Case.Phase);
        Assert.Equal("straighten-hose", talk.Case.Open.Subject);
        return talk;
    }
}
