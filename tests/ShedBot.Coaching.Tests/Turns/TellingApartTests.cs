using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

/// <summary>Words that could mean a danger or a mere trouble, on the made-up pump: "the grey one does nothing" may be its pipe or its earth wire.</summary>
public sealed class TellingApartTests
{
    private const string Which = "Which of the two is it?", Differently = "Is there water in it?";

    private const string Either = """

        could be either:
          - id: which-one
            called: which of the two it is
            riders name: [the grey one]
            and tell: [does nothing, comes out of the pump]
            ask: Which of the two is it?
            why: They look alike, and one of them kills.
            other words: Is there water in it?
            show me: "pipe ====   wire ----"
            caution: {word: WARNING, hazard: A grey thing that does nothing, consequence: it may be live, avoid: pull the plug until we know}
            until known: [Pull the plug., Keep off.]
            if unsure: It may be live. Leave the plug out.
            answers:
              - {says: It is a pipe, riders say: [the pipe, it is the hose], named by: [pipe], means: no-water}
              - {says: It is a wire, riders say: [the wire, a cable], named by: [wire], means: shock}
              - {says: It is hot, riders say: [hot], means: smoke}
        """;

    private static readonly Coach Coach = Pump.CoachOf(Pump.Load(Pump.Text + Either));

    private static Talk Asked(string words = "the grey one does nothing") => new Talk(Coach).Say(words);

    [Fact]
    public void Say_CouldBeEither_AsksFirstWithTheCautionAndWhatHoldsMeanwhile()
    {
        var talk = Asked();
        Assert.Equal(Which, talk.Last.Title);
        Assert.Equal(["It is a pipe", "It is a wire", "It is hot"], talk.Last.Options.Where(o => o.Role == OptionRole.Answer).Select(o => o.Label));
        Assert.IsType<CautionBlock>(talk.Last.Blocks[0]);
        Assert.Contains("Pull the plug.", talk.AllText, StringComparison.Ordinal);
        Assert.DoesNotContain(talk.Case.Standing, e => e.Kind == EntryKind.Complaint);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("the pipe")]
    public void Say_ItIsTheTrouble_GoesOnWithIt(string words)
    {
        var talk = Asked().Say(words);
        Assert.Equal("Is the tap at the tank open?", talk.Last.Title);
        Assert.Equal(["no-water"], talk.Case.Standing.Where(e => e.Kind == EntryKind.Complaint).Select(e => e.Subject));
    }

    [Theory]
    [InlineData("2")]
    [InlineData("a cable i think")]
    public void Say_ItIsTheDanger_TellsOfNothingElse(string words)
    {
        var talk = Asked("loud humming noise. the grey one does nothing").Say(words);
        Assert.Equal("Somebody got an electric shock", talk.Last.Title);
        Assert.Equal(CasePhase.Stopped, talk.Case.Phase);
        Assert.DoesNotContain(talk.Case.Standing, e => e.Kind == EntryKind.Complaint);
    }

    [Fact]
    public void Say_SomethingPlainBesides_IsKeptUntilItIsKnown()
    {
        var talk = Asked("loud humming noise. the grey one does nothing");
        Assert.Equal(Which, talk.Last.Title);
        talk.Pick("It is a pipe");
        Assert.Equal(["hums", "no-water"], talk.Case.Standing.Where(e => e.Kind == EntryKind.Complaint).Select(e => e.Subject));
    }

    [Fact]
    public void Say_NotSureTwice_AsksDifferentlyThenStopsWithoutGuessing()
    {
        var talk = Asked("loud humming noise. the grey one does nothing").Say("dunno");
        Assert.Equal(Differently, talk.Last.Title);
        Assert.Contains("pipe ====", talk.AllText, StringComparison.Ordinal);
        talk.Say("no idea");
        Assert.Equal(CasePhase.Stopped, talk.Case.Phase);
        Assert.Contains("It may be live. Leave the plug out.", talk.AllText, StringComparison.Ordinal);
        Assert.DoesNotContain("You found", talk.AllText, StringComparison.Ordinal);
        Assert.DoesNotContain(talk.Case.Standing, e => e.Kind == EntryKind.Complaint);
    }

    [Fact]
    public void Say_NoneOfTheAnswers_IsNotGuessedAndAskedDifferently()
    {
        var talk = Asked().Say("the left one");
        Assert.Equal(Differently, talk.Last.Title);
        talk.Say("the left one, as i said");
        Assert.Equal("I cannot tell from that", talk.Said[0].Title);
        Assert.Equal(Differently, talk.Last.Title);
        Assert.False(talk.Case.IsClosed);
        Assert.Equal(CasePhase.Stopped, talk.Say("left, left, left").Case.Phase);
    }

    [Fact]
    public void Say_CannotLookNow_KeepsTheQuestion()
    {
        var talk = Asked().Pick("Can't do that now");
        Assert.Equal("Then it stands until you can look", talk.Said[0].Title);
        Assert.Equal(Which, talk.Last.Title);
        Assert.Equal(AskKind.Check, talk.Pick("It is a pipe").Case.Open.Kind);
    }

    [Fact]
    public void Say_WhyAndShowMe_AreAnsweredFromTheRule()
    {
        var talk = Asked().Say("why do you ask?");
        Assert.Contains("one of them kills", Talk.Text(talk.Said[0]), StringComparison.Ordinal);
        talk.Say("show me");
        Assert.Contains("pipe ====", Talk.Text(talk.Said[0]), StringComparison.Ordinal);
        Assert.Equal(Which, talk.Last.Title);
    }

    [Fact]
    public void Say_Back_AsksWhichOnceMore()
    {
        var talk = Asked().Pick("It is a pipe").Say("back");
        Assert.Equal(Which, talk.Last.Title);
        Assert.DoesNotContain(talk.Case.Standing, e => e.Kind == EntryKind.Complaint);
    }

    /// <summary>A danger that the words could also mean is asked about; a plain one is not.</summary>
    [Fact]
    public void Say_SoundsLikeOneOfItsDangers_IsAskedAlsoInTheMiddleOfACase()
    {
        var talk = Asked("no water comes out").Say("smoke comes out of the pump, the grey one");
        Assert.Equal(Which, talk.Last.Title);
        Assert.Equal("The pump smokes", talk.Pick("It is hot").Last.Title);
        Assert.Equal("The pump smokes", Asked("no water comes out").Say("smoke comes out of the pump").Last.Title);
    }

    [Fact]
    public void Say_InTheMiddleOfACase_IsNoNewQuestion() =>
        Assert.NotEqual(AskKind.Either, Asked("no water comes out").Say("the grey one does nothing").Case.Open.Kind);

    [Fact]
    public void Say_AnotherDangerBesides_ComesFirstAndTheQuestionAfter()
    {
        var pump = Pump.Load((Pump.Text + Either).Replace(", means: smoke}", ", means: shock}", StringComparison.Ordinal));
        var talk = new Talk(Pump.CoachOf(pump)).Say("smoke comes out of the pump and the grey one does nothing");
        Assert.Equal(AskKind.AllSafe, talk.Case.Open.Kind);
        talk.Say("the grey one does nothing");
        Assert.Equal(AskKind.AllSafe, talk.Case.Open.Kind);
        Assert.Equal(Which, talk.Pick("Everybody is safe").Last.Title);
    }

    [Fact]
    public void Take_RuleGoneMeanwhile_GoesOnWithoutIt()
    {
        var talk = Asked("loud humming noise. the grey one does nothing");
        talk.Coach = Pump.Coach;
        talk.PickId(talk.Last.Options[0].Id);
        Assert.Equal("That question has gone", talk.Last.Title);
        Assert.Equal(AskKind.Check, talk.Pick("Go on").Case.Open.Kind);
    }

    [Fact]
    public void Hears_CouldBeEither_IsATrouble() => Assert.True(Coach.Hears("the grey one does nothing"));
}
