using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

/// <summary>A trouble that work on the machine has shown.</summary>
public sealed class RevealingTests
{
    private static readonly BikeId Bike = new("b1");

    [Fact]
    public void Take_OnANewCase_AsksAsIfTheComplaintHadBeenSaid()
    {
        var told = new Talk().Say("no water comes out of my pump");
        var found = new Talk().Take(new TroubleFound("e1", Bike, "no-water"));
        Assert.Equal(told.Last.Title, found.Last.Title);
        Assert.Equal((CasePhase.Asking, "no water comes"), (found.Case.Phase, found.Case.OpeningWords));
        Assert.Contains("So no water comes.", found.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Take_WhileAnotherTroubleIsOpen_AddsItToTheCase()
    {
        var talk = new Talk().Say("no water comes out").Take(new TroubleFound("e7", Bike, "hums"));
        Assert.Equal(["no-water", "hums"], talk.Case.Entries.Where(e => e.Kind == EntryKind.Complaint).Select(e => e.Subject));
        Assert.NotEmpty(talk.Last.Options);
    }

    [Fact]
    public void Take_WhatWasSaidBefore_PutsTheOpenQuestionAgain()
    {
        var talk = new Talk().Say("no water comes out");
        var (question, entries) = (talk.Last.Title, talk.Case.Entries);
        talk.Take(new TroubleFound("e7", Bike, "no-water"));
        Assert.Equal((question, entries), (talk.Last.Title, talk.Case.Entries));
    }

    [Fact]
    public void Take_TheSameEventTwice_CountsOnce()
    {
        var talk = new Talk().Take(new TroubleFound("e1", Bike, "no-water"));
        Assert.Empty(talk.Take(new TroubleFound("e1", Bike, "no-water")).LastTurn.Say);
        Assert.Equal(1, talk.Case.Turn);
    }

    [Fact]
    public void Take_AComplaintTheRulesNoLongerHave_AsksForTheTrouble() =>
        Assert.Equal("What does the bike do?", new Talk().Take(new TroubleFound("e1", Bike, "gone")).Last.Title);

    [Theory]
    [InlineData("b1", true)]
    [InlineData("b2", false)]
    public void Take_TheCaseIsClosedOrOfAnotherBike_WantsANewCase(string bike, bool closed)
    {
        var talk = new Talk().Say("no water comes out");
        if (closed) talk.Say("forget it");
        Assert.Equal(closed, talk.Case.IsClosed);
        var before = talk.Case;
        Assert.True(talk.Take(new TroubleFound("e7", new BikeId(bike), "hums")).LastTurn.OpensNew);
        Assert.Equal(before, talk.Case);
    }
}
