using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Turns;

public sealed class WordsTests
{
    [Theory]
    [InlineData("it is shut")]
    [InlineData("the tap was closed")]
    [InlineData("it is shut, somebody must have been at it")]
    [InlineData("2")]
    public void Say_WordsForAnOption_CountAsTheOption(string words)
    {
        var talk = new Talk().Say("no water comes out").Say(words);
        Assert.Contains(talk.Case.Entries, e => e is { Kind: EntryKind.Answer, Subject: "ask-tap", Value: "shut" });
    }

    [Fact]
    public void Say_NoAndMore_MeansTheOneAnswerThatBeginsWithNo()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Say("yes, i have done every bit of that just now");
        Assert.Contains(talk.Case.Entries, e => e.Kind == EntryKind.Ready);
    }

    [Fact]
    public void Say_NotSure_AsksOnceInOtherWordsThenGoesAnotherWay()
    {
        var talk = new Talk().Say("no water comes out").Say("dunno");
        Assert.StartsWith("Look at the little lever", talk.Last.Title, StringComparison.Ordinal);
        Assert.DoesNotContain(talk.Case.Entries, e => e.Kind == EntryKind.NotSure);
        talk.Say("no idea");
        Assert.Contains(talk.Case.Entries, e => e is { Kind: EntryKind.NotSure, Subject: "ask-tap" });
        Assert.NotEqual("Is the tap at the tank open?", talk.Last.Title);
    }

    [Fact]
    public void Say_Why_ExplainsAndAsksAgainWithTheSameOptions()
    {
        var talk = new Talk().Say("no water comes out");
        var options = talk.Last.Options;
        talk.Say("why do you ask?");
        Assert.Equal("Why I ask", talk.Said[0].Title);
        Assert.Contains("would point to: the tap at the tank is shut", talk.AllText, StringComparison.Ordinal);
        Assert.Equal(options.Select(o => o.Id), talk.Last.Options.Select(o => o.Id));
    }

    [Fact]
    public void Say_Why_RepeatsTheWholeCardAndSaysSo()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open");
        var first = talk.Last;
        talk.Say("why do you ask?");
        Assert.False(first.Repeated);
        Assert.NotEmpty(first.Blocks);
        Assert.True(talk.Last.Repeated);
        Assert.Equal(Talk.Text(first), Talk.Text(talk.Last));
    }

    [Fact]
    public void Say_ShowMe_ShowsTheFullerHelp() =>
        Assert.Contains("Along the pipe is open", new Talk().Say("no water comes out").Say("show me").AllText, StringComparison.Ordinal);

    [Fact]
    public void Say_Back_TakesTheLastAnswerBackAndAsksItAgain()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open");
        talk.Say("back");
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
        Assert.True(talk.Case.Entries.Single(e => e.Kind == EntryKind.Answer).Struck);
    }

    [Fact]
    public void Say_LaterCorrection_StrikesTheEarlierAnswerAndReplans()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Say("sorry, the tap is shut after all");
        Assert.True(talk.Case.Entries.Single(e => e is { Kind: EntryKind.Answer, Subject: "ask-tap" }).Struck);
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.Volunteered, Subject: "tap", Value: "shut" });
        Assert.StartsWith("Noted:", ((Cards.TextBlock)talk.Last.Blocks[0]).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Say_SecondComplaintLater_IsAddedToTheCase()
    {
        var talk = new Talk().Say("no water comes out").Say("and it hums very loud");
        Assert.Equal(["no-water", "hums"], talk.Case.Standing.Where(e => e.Kind == EntryKind.Complaint).Select(e => e.Subject));
    }

    [Fact]
    public void Say_HowDoI_IsAnsweredAndTheQuestionStaysOpen()
    {
        var talk = new Talk().Say("no water comes out").Say("how do I store the pump for winter?");
        Assert.Contains("Drain it", talk.AllText, StringComparison.Ordinal);
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("😀😀😀")]
    [InlineData("\u0000\u0001\u0002")]
    [InlineData("مرحبا كيف حالك")]
    [InlineData("asdf qwer zxcv")]
    public void Say_NothingToGoOn_GetsAKindAnswerAndNoCase(string words)
    {
        var talk = new Talk().Say(words);
        Assert.NotEmpty(talk.Said);
        Assert.Equal(CasePhase.Opening, talk.Case.Phase);
        Assert.Empty(talk.Case.Entries);
    }

    [Fact]
    public void Say_HugeMessage_GetsAnAnswer() =>
        Assert.NotEmpty(new Talk().Say(string.Concat(Enumerable.Repeat("no water comes out and ", 20_000))).Said);

    [Fact]
    public void Say_NotAtTheBike_AsksFromMemoryThenRestsAndGoesOnAfterDays()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open");
        Assert.Equal(Pump.Knowledge.Triage.Ask, talk.Last.Title);
        talk.Pick("Not yet");
        Assert.Equal(CasePhase.Resting, talk.Case.Phase);
        talk.Now = Pump.Noon.AddDays(3);
        talk.Say("I'm at the bike now, all safe");
        Assert.Equal(CasePhase.Asking, talk.Case.Phase);
        Assert.StartsWith("Run your hand along the hose", talk.Last.Title, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("I'd rather have a helper")]
    [InlineData("can I talk to a person")]
    public void Say_WantsAHuman_IsHandedOverAtAnyQuestion(string words) =>
        Assert.Equal(CasePhase.HandedOver, new Talk().Say("no water comes out").Say(words).Case.Phase);

    [Theory]
    [InlineData("1")]
    [InlineData("the last one")]
    public void Say_APlaceInAListThatIsNotThere_DoesNotEndTheCase(string words) =>
        Assert.False(new Talk().Say("hello").Say(words).Case.IsClosed);

    [Fact]
    public void Say_OneOfMyAnswersWasWrong_OffersThemAndAsksThePickedOneAgain()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Say("one of my earlier answers was wrong");
        Assert.Equal("Which answer do you want to change?", talk.Last.Title);
        talk.Pick("How the tap at the tank stands");
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
        Assert.True(talk.Case.Entries.Single(e => e.Kind == EntryKind.Answer).Struck);
    }

    [Fact]
    public void Say_NotSureWhetherItIsSafe_CountsAsNotYet()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Say("not sure");
        Assert.Contains(talk.Case.Entries, e => e.Kind == EntryKind.NotReady);
    }

    [Fact]
    public void Say_ItCameBack_AfterItWasSolved_GoesOnInTheSameCase()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Pick("Done").Pick("It holds").Say("it came back");
        Assert.Contains(talk.Case.Entries, e => e.Kind == EntryKind.CameBack);
    }

    [Fact]
    public void Say_ChatterAtAnOpenQuestion_ChangesNothingAndTheQuestionStays()
    {
        var talk = new Talk().Say("no water comes out").Say("hello how are you");
        Assert.Equal("I did not get that", talk.Said[0].Title);
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
    }

    [Fact]
    public void Say_NoAnswerTwice_AsksInOtherWordsThenGoesAnotherWayWithoutEvidence()
    {
        var talk = new Talk().Say("no water comes out").Say("a lot of it").Say("well, quite a lot i would say");
        Assert.Equal("I still do not get that", talk.Said[0].Title);
        Assert.StartsWith("Look at the little lever", talk.Last.Title, StringComparison.Ordinal);
        Assert.DoesNotContain(talk.Case.Standing, e => e.Kind is EntryKind.NotSure or EntryKind.Answer);
        talk.Say("a lot");
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.NotSure, Subject: "ask-tap" });
        Assert.NotEqual("Is the tap at the tank open?", talk.Last.Title);
    }

    [Fact]
    public void Say_AnswerAfterAMiss_Counts()
    {
        var talk = new Talk().Say("no water comes out").Say("a lot of it").Say("it is shut");
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.Answer, Subject: "ask-tap", Value: "shut" });
    }

    [Fact]
    public void Say_SomethingElseWhileItWaits_IsToldHowItGoesOn()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Pick("Not yet");
        Assert.DoesNotContain("from memory", talk.AllText, StringComparison.Ordinal);
        talk.Say("it is dark out here now");
        Assert.Contains("say 'ready'", Talk.Text(talk.Said[0]), StringComparison.Ordinal);
        Assert.Equal(CasePhase.Resting, talk.Case.Phase);
        Assert.Equal(CasePhase.Asking, talk.Say("yep").Case.Phase);
    }

    [Fact]
    public void Pick_ReadyOfYesterday_IsAskedAnew()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open").Pick("Yes, all of it");
        talk.Now = Pump.Noon.AddDays(1);
        talk.Pick("It lies straight");
        Assert.Equal(Pump.Knowledge.Triage.Ask, talk.Last.Title);
    }
}
