using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Service;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>What each answer does. Common practice, no source.</summary>
public sealed class TakingTests
{
    [Fact]
    public void Done_PressedTwiceAndLate_IsNotedOnce()
    {
        var (talk, card) = Told("grease");

        Assert.StartsWith("Noted as done: grease", talk.Press(card, "Done", At(June3, 19)).Say.Title, StringComparison.Ordinal);
        Assert.Empty(talk.Press(card, "Done", At(June3, 19)).Bikes);
        Assert.Empty(talk.Press(card, "Done", At(June3.PlusDays(1), 12)).Bikes);

        Assert.Equal([new LocalDate(2026, 6, 1), June3], talk.Bikes[0].Done.Select(d => d.Day));
    }

    [Fact]
    public void AllDone_Pressed_NotesAllOfTheDigestAndNothingElse()
    {
        var talk = new Talk(Due("a", 3), Due("b", 3), Due("c", 20)).Fresh();
        var card = talk.Look(June3, 18)!;

        var bike = Assert.Single(talk.Press(card, "All of it", At(June3, 19)).Bikes);

        Assert.Equal(["a", "b"], bike.Done.Where(d => d.Day == June3).Select(d => d.Task));
        Assert.Equal(talk.Bikes[0].Version, bike.Version);
    }

    [Fact]
    public void Tonight_PressedInTheMorning_IsSaidOnceMoreThatEveningAndOnlyThen()
    {
        var (talk, card) = Told("grease", preferred: 9);
        talk.Press(card, "Tonight", At(June3, 9, 30));

        Assert.Equal(At(June3, 18), Assert.Single(talk.Watch(At(June3, 9, 30), At(June3.PlusDays(20), 0))).At);
    }

    [Fact]
    public void Tonight_AskedTwiceOnADay_IsSaidOnceThatDay()
    {
        var (talk, card) = Told("grease", preferred: 9);
        talk.Press(card, "Tonight", At(June3, 9, 30));
        var evening = talk.Look(June3, 18)!;
        talk.Press(evening, "Tomorrow", At(June3, 18));

        Assert.Equal(At(June3.PlusDays(1), 9), Assert.Single(talk.Watch(At(June3, 18), At(June3.PlusDays(9), 0))).At);
    }

    [Theory]
    [InlineData(17, 45, 20, 0)]
    [InlineData(12, 0, 18, 0)]
    public void Tonight_LateInTheDay_TakesTheNextEveningHour(int hour, int minute, int atHour, int atMinute)
    {
        var (talk, card) = Told("grease", preferred: 9);
        talk.Press(card, "Tonight", At(June3, hour, minute));

        Assert.Equal(At(June3, atHour, atMinute), Assert.Single(talk.Rider.Later).Until);
    }

    [Fact]
    public void Tonight_NoneLeft_IsCalledTomorrowAndIs()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.Rider = talk.Rider.Prefer(new LocalTime(20, 0), At(June3, 0));
        var card = talk.Look(June3, 20)!;

        talk.Press(card, "Tomorrow", At(June3, 20));

        Assert.Equal(At(June3.PlusDays(1), 20), Assert.Single(talk.Watch(At(June3, 20), At(June3.PlusDays(9), 0))).At);
    }

    [Theory]
    [InlineData(3, 6)]
    [InlineData(5, 6)]
    [InlineData(6, 13)]
    [InlineData(7, 13)]
    public void Weekend_Pressed_IsTheNextSaturdayMorning(int day, int saturday)
    {
        var talk = new Talk(Due("grease", day)).Fresh();
        var card = talk.Look(new LocalDate(2026, 6, day), 18)!;
        talk.Press(card, "Saturday", At(new LocalDate(2026, 6, day), 18));

        var (at, again) = Assert.Single(talk.Watch(At(new LocalDate(2026, 6, day), 18), At(new LocalDate(2026, 6, 28), 0)));

        Assert.Equal((At(new LocalDate(2026, 6, saturday), 10), card.Title), (at, again.Title));
    }

    [Fact]
    public void NextWeek_DoneMeanwhile_IsNotSaidAgain()
    {
        var (talk, card) = Told("grease");
        talk.Press(card, "In a week", At(June3, 19));
        Assert.Equal(At(June3.PlusDays(7), 18), Assert.Single(talk.Rider.Later).Until);
        talk.Press(card, "Done", At(June3.PlusDays(1), 12));

        Assert.Empty(talk.Watch(At(June3.PlusDays(1), 12), At(June3.PlusDays(2), 12)));
        Assert.Empty(talk.Rider.Later);
    }

    [Fact]
    public void StopTask_Pressed_SilencesThatTaskOnly()
    {
        var talk = new Talk(Due("a", 3), Due("b", 6)).Fresh();
        talk.Press(talk.Look(June3, 18)!, "No more of this", At(June3, 19));
        talk.Bikes = [talk.Bikes[0].Did(June3, "a")];

        Assert.Equal("Due on your bike: b", Assert.Single(talk.Watch(At(June3, 19), At(June3.PlusDays(20), 0))).Card.Title);
        Assert.Contains(talk.Last.Withheld, w => w.Why == WithheldFor.Stopped);
        talk.Rider = talk.Rider.HearAgainOf("a", At(June3.PlusDays(20), 0));
        Assert.Equal("Due on your bike: a", talk.Look(June3.PlusDays(20), 18)!.Title);
    }

    [Fact]
    public void StopAll_Pressed_EndsItUntilAskedFor()
    {
        var talk = new Talk(Due("a", 3), Due("b", 6)).Fresh();
        talk.Press(talk.Look(June3, 18)!, "Stop all", At(June3, 19));

        Assert.Empty(talk.Watch(At(June3, 19), At(June3.PlusDays(20), 0)));
        talk.Answer(new NudgeAnswer(NudgeVerb.Agree, June3), At(June3.PlusDays(20), 0));
        Assert.Equal("Due on your bike: b", talk.Look(June3.PlusDays(20), 18)!.Title);
    }

    [Fact]
    public void Trouble_Picked_OpensACaseWithTheComplaint()
    {
        var complaint = new Talk().Knowledge.Complaints.Keys.First();
        var talk = new Talk(Due("grease", 3) with { Reveals = [complaint] }).Fresh();
        var which = talk.Press(talk.Look(June3, 18)!, "It shows trouble", At(June3, 19)).Say;

        var option = Assert.Single(which.Options);

        Assert.Equal(new TroubleShown(Yard.Bike.Id, complaint), talk.Answer(NudgeAnswer.Read(option.Id)!, At(June3, 19)).Opens);
    }

    [Fact]
    public void HowTo_Pressed_ShowsStepsAndCautions()
    {
        var (talk, card) = Told("grease");

        Assert.Contains(talk.Press(card, "How do I", At(June3, 19)).Say.Blocks, b => b is StepsBlock { Steps: [{ Do: "Grease it." }] });
    }

    [Fact]
    public void Look_AtOneOfSeveral_OffersItsOwnAnswers()
    {
        var talk = new Talk(Due("a", 3), Due("b", 3)).Fresh();
        var one = talk.Press(talk.Look(June3, 18)!, "B", At(June3, 19)).Say;

        talk.Press(one, "Done", At(June3, 19));

        Assert.Equal("b", talk.Bikes[0].Done[^1].Task);
    }

    [Fact]
    public void Rode_PressedTwice_IsOneRiddenDayAndWhatIsDueStays()
    {
        var (talk, card) = Told("grease");

        Assert.StartsWith("Noted: a ride", talk.Press(card, "I rode", At(June3, 19)).Say.Title, StringComparison.Ordinal);
        Assert.Empty(talk.Press(card, "I rode", At(June3, 20)).Bikes);

        Assert.Equal(June3, talk.Bikes[0].Riding.LastDay);
        Assert.Single(talk.Press(card, "Done", At(June3, 20)).Bikes);
    }

    [Fact]
    public void Rode_PressedADayLater_IsARideOfThatDay()
    {
        var (talk, card) = Told("grease");
        talk.Press(card, "I rode", At(June3.PlusDays(1), 7));

        Assert.Equal(June3.PlusDays(1), talk.Bikes[0].Riding.LastDay);
    }

    [Fact]
    public void NotRiding_PressedTwice_IsOneBreak()
    {
        var (talk, card) = Told("grease");
        talk.Press(card, "Not riding", At(June3, 19));

        Assert.Empty(talk.Press(card, "Not riding", At(June3.PlusDays(1), 19)).Bikes);
        Assert.Null(Assert.Single(talk.Bikes[0].Riding.Breaks).Until);
    }

    [Fact]
    public void NotRiding_TillYesterday_IsRefusedAndChangesNothing()
    {
        var (talk, _) = Told("grease");

        Assert.Empty(talk.Answer(new NudgeAnswer(NudgeVerb.NotRiding, June3), At(June3, 19), June3.PlusDays(-1)).Bikes);
        Assert.Empty(talk.Bikes[0].Riding.Breaks);
    }

    [Theory]
    [InlineData(NudgeVerb.Done)]
    [InlineData(NudgeVerb.Look)]
    [InlineData(NudgeVerb.OpenCase)]
    public void Take_BikeOrTaskGone_SaysSo(NudgeVerb verb)
    {
        var (talk, _) = Told("grease");

        Assert.Equal("I don't know that any more", talk.Answer(new NudgeAnswer(verb, June3, "sold", "grease"), At(June3, 19)).Say.Title);
    }

    [Theory]
    [InlineData("")]
    [InlineData("3/done")]
    [InlineData("nudge|20260603|Done|b1")]
    [InlineData("nudge|20261303|Done|b1|grease")]
    [InlineData("nudge|20260603|3|b1|grease")]
    public void Read_WhatWasNeverOurs_IsNull(string option) => Assert.Null(NudgeAnswer.Read(option));

    [Fact]
    public void Options_OfTheLongestClubTask_FitAHundredCharacters()
    {
        var talk = new Talk(Due("a-task-with-quite-a-long-name-of-40-chars", 3)).Fresh();

        Assert.All(talk.Look(June3, 18)!.Options, o => Assert.InRange(o.Id.Length, 1, 100));
    }

    [Fact]
    public void BeQuiet_AllDay_IsRefused()
    {
        var rider = new Talk().Rider;

        Assert.Equal("always-quiet", rider.BeQuiet(new QuietHours(new LocalTime(8, 30), new LocalTime(8, 0)), At(June3, 0)).Refused?.Code);
        Assert.NotNull(rider.BeQuiet(new QuietHours(new LocalTime(9, 0), new LocalTime(8, 0)), At(June3, 0)).Value);
        Assert.NotNull(rider.BeQuiet(new QuietHours(new LocalTime(0, 0), new LocalTime(0, 0)), At(June3, 0)).Value);
    }

    [Fact]
    public void MoveTo_UnknownZone_IsRefused() => Assert.Equal("zone", new Talk().Rider.MoveTo("Mars/Base", At(June3, 0)).Refused?.Code);

    private static (Talk Talk, Card Card) Told(string task, int preferred = 18)
    {
        var talk = new Talk(Due(task, 3)).Fresh();
        talk.Rider = talk.Rider.Prefer(new LocalTime(preferred, 0), At(June3, 0));
        return (talk, talk.Look(June3, preferred)!);
    }
}
