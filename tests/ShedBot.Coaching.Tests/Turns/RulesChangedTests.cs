using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

/// <summary>What happens to an open case when the rules change between two of its turns, and to words that no rule knows.</summary>
public sealed class RulesChangedTests
{
    private const string ThoughtAnew = "The club's rules have changed";

    [Fact]
    public void Take_RulesChangedSinceTheQuestion_SaysSoOnceAndGoesOn()
    {
        var talk = new Talk().Say("no water comes out");
        Assert.Equal(AskKind.Check, talk.Case.Open.Kind);
        talk.Coach = Pump.Without("turn-shaft");
        talk.Pick("It is open");
        Assert.Contains(ThoughtAnew, talk.AllText, StringComparison.Ordinal);
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.Answer, Subject: "ask-tap", Value: "open" });
        talk.Say("why");
        Assert.DoesNotContain(ThoughtAnew, talk.AllText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Take_TheQuestionIsGone_GoesOnFromWhatWasTold(bool byKey)
    {
        var talk = new Talk().Say("no water comes out");
        Assert.Equal("ask-tap", talk.Case.Open.Subject);
        talk.Coach = Pump.Without("ask-tap");
        var shown = CaseLook.OpenQuestion(talk.Coach.Knowledge, talk.Coach.Options, talk.Case, talk.Bike, talk.Now);
        Assert.NotNull(shown);
        if (byKey) talk.PickId(Assert.Single(shown.Options, o => o.Label == "Go on").Id);
        else talk.Say("the hose has a kink");
        Assert.NotEqual("ask-tap", talk.Case.Open.Subject);
        Assert.Contains(talk.Case.Standing, e => e is { Kind: EntryKind.Complaint, Subject: "no-water" });
        Assert.NotEmpty(talk.Last.Options);
        Assert.Contains(ThoughtAnew, talk.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_AnOptionOfTheQuestionThatIsGone_DoesNothingButTellSo()
    {
        var talk = new Talk().Say("no water comes out");
        var open = talk.Last.Options.First(o => o.Label == "It is open").Id;
        talk.Coach = Pump.Without("ask-tap");
        talk.PickId(open);
        Assert.DoesNotContain(talk.Case.Entries, e => e.Kind == EntryKind.Answer);
        Assert.DoesNotContain("It was answered already", talk.AllText, StringComparison.Ordinal);
        talk.Pick("Go on");
        Assert.NotEqual("ask-tap", talk.Case.Open.Subject);
    }

    [Fact]
    public void Take_AnAnswerToACheckThatIsGone_IsShownNoMoreAndComesBackWithTheRule()
    {
        var talk = new Talk().Say("no water comes out").Pick("It is open");
        talk.Coach = Pump.Without("ask-tap");
        var without = CaseLook.Belief(talk.Coach.Knowledge, talk.Coach.Options, talk.Case, talk.Bike, talk.Now);
        var with = CaseLook.Belief(Pump.Knowledge, Pump.Coach.Options, talk.Case, talk.Bike, talk.Now);
        Assert.NotEqual(Talk.Text(with), Talk.Text(without));
        talk.Say("help me");
        Assert.Contains(talk.Case.Standing, e => e.Subject == "ask-tap");
    }

    [Fact]
    public void Take_WordsThatNothingCouldBeMadeOf_AreToldWithWhatWasAsked()
    {
        var talk = new Talk().Say("it glimmers a bit today");
        Assert.Equal(new UnheardWords(talk.Case.Member, "it glimmers a bit today", UnheardWords.Trouble, talk.Now), talk.LastTurn.Unheard);
        Assert.Null(new Talk().Say("hello there").LastTurn.Unheard);
        talk = new Talk().Say("no water comes out").Say("it glimmers a bit");
        Assert.Equal("ask-tap", talk.LastTurn.Unheard?.Expected);
        Assert.Null(talk.Pick("It is open").LastTurn.Unheard);
    }

    [Fact]
    public void Take_VeryLongWords_AreKeptCut()
    {
        var talk = new Talk().Say("no water comes out").Say(string.Join(' ', Enumerable.Repeat("frobnicate", 45)));
        Assert.True(talk.LastTurn.Unheard is null or { Words.Length: <= UnheardWords.Longest });
    }
}
