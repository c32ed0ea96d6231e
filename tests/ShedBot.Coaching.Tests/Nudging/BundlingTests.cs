using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Service;
using ShedBot.Knowledge.Rules;
using static ShedBot.Coaching.Tests.Nudging.Talk;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>What waits for the next digest, what does not, and what comes along. Common practice, no source.</summary>
public sealed class BundlingTests
{
    private static readonly LocalDate June11 = new(2026, 6, 11);

    [Fact]
    public void Decide_DueShortlyAfterADigest_IsGatheredAndToldWhenTheGapEnds()
    {
        var talk = new Talk(Pressing("a", 3), Due("b", 5), Due("c", 6)).Fresh();
        talk.Look(June3, 18);

        Assert.Null(talk.Look(June3.PlusDays(2), 18));
        Assert.Equal([WithheldFor.Told, WithheldFor.Gathering], talk.Last.Withheld.Select(w => w.Why).Order());
        Assert.Equal(At(June3.PlusDays(4), 18), talk.Rider.NextLook);
        Assert.Equal("2 things are due on your bike", talk.Look(talk.Rider.NextLook!.Value)!.Title);
    }

    [Fact]
    public void Decide_SomethingPressesInTheGap_GoesTheSameDayAndBringsAlongWhatWaits()
    {
        var talk = new Talk(Pressing("a", 3), Due("b", 4), Pressing("c", 5)).Fresh();

        var sent = talk.Watch(At(June3, 0), At(June3.PlusDays(20), 0));

        Assert.Equal([June3, June3.PlusDays(2)], sent.Select(s => LocalDate.FromDateTime(s.At.Date)));
        Assert.Equal("2 things are due on your bike", sent[1].Card.Title);
    }

    [Fact]
    public void NextLook_InTheGap_WakesForWhatPressesAndNotForTheRest()
    {
        var talk = new Talk(Pressing("a", 3), Due("b", 5)).Fresh();
        talk.Look(June3, 18);
        Assert.Equal(At(June3.PlusDays(4), 18), talk.Rider.NextLook);

        var other = new Talk(Pressing("a", 3), Pressing("b", 5)).Fresh();
        other.Look(June3, 18);
        Assert.Equal(At(June3.PlusDays(2), 18), other.Rider.NextLook);
    }

    [Theory]
    [InlineData(0, Measure.RidingDays, true)]
    [InlineData(2, Measure.RidingDays, true)]
    [InlineData(3, Measure.RidingDays, false)]
    [InlineData(20, Measure.Kilometres, true)]
    [InlineData(50, Measure.Kilometres, false)]
    [InlineData(1, Measure.Hours, true)]
    [InlineData(5, Measure.Hours, false)]
    public void Decide_AfterTheFirstRides_PressesByHowLittleIsRiddenUntilThen(double amount, Measure measure, bool presses)
    {
        var talk = new Talk(Pressing("a", 3), Yard.Task("again").Following("new-pads", new Interval(amount, measure))).Fresh();
        talk.Look(June3, 18);
        var ridden = talk.Bikes[0].Mended(At(June3, 20), "new-pads");
        talk.Bikes = [Enumerable.Range(1, 3).Aggregate(ridden, (b, i) => b.Rode(June3.PlusDays(i), 30, 3))];

        Assert.Equal(presses, talk.Look(June3.PlusDays(3), 18) is not null);
        Assert.Equal(!presses, talk.Last.Withheld.Any(w => w.Why == WithheldFor.Gathering));
    }

    [Fact]
    public void Decide_NearlyDue_ComesAlongOnceAndSaysWhenItIsExpected()
    {
        var talk = new Talk(Due("a", 11), Due("b", 13)).Fresh();

        var (_, card) = Assert.Single(talk.Watch(At(June3, 0), At(June11.PlusDays(20), 0)));

        Assert.Equal("Due on your bike: a", card.Title);
        Assert.Equal("do a (10 of 10 days)", Assert.Single(card.Blocks.OfType<ListBlock>().First().Items));
        Assert.Equal("do b (10 of 12 days, expected on Sat 13 Jun)", Assert.Single(card.Blocks.OfType<ListBlock>().Last().Items));
        Assert.Equal(2, talk.Rider.Told.Length);
    }

    [Theory]
    [InlineData(15, true)]
    [InlineData(16, false)]
    [InlineData(13, true)]
    public void Decide_ComingUp_ComesAlongWithinFourDays(int day, bool along)
    {
        // Day 15 is 4 days ahead; 16 is 5. Done on the second of May, so that four fifths of the way have passed.
        var rule = Yard.Task("b", Yard.Calendar(29 + day)) with { Called = "b", Does = "do b" };
        var talk = new Talk(Due("a", 11), rule).Fresh();
        talk.Bikes = [talk.Bikes[0] with { Done = [.. talk.Bikes[0].Done.Select(d => d.Task == "b" ? d with { Day = new LocalDate(2026, 5, 2) } : d)] }];

        talk.Look(June11, 18);

        Assert.Equal(along ? 2 : 1, talk.Last.Say!.DueKeys.Length);
    }

    [Fact]
    public void Decide_NearInDaysAndFarFromDue_DoesNotComeAlong()
    {
        var talk = new Talk(Pressing("a", 3), Due("b", 6)).Fresh();

        talk.Look(June3, 18);

        Assert.Single(talk.Last.Say!.DueKeys);
    }

    [Fact]
    public void AllDone_WithSomethingComingUp_NotesBoth()
    {
        var talk = new Talk(Due("a", 11), Due("b", 13)).Fresh();

        var bike = Assert.Single(talk.Press(talk.Look(June11, 18)!, "All of it", At(June11, 19)).Bikes);

        Assert.Equal(["a", "b"], bike.Done.Where(d => d.Day == June11).Select(d => d.Task));
    }

    [Fact]
    public void DueDone_WithSomethingComingUp_NotesWhatWasDueAndTellsTheRestOnceItIs()
    {
        var talk = new Talk(Due("a", 11), Pressing("b", 13)).Fresh();
        var card = talk.Look(June11, 18)!;

        var bike = Assert.Single(talk.Press(card, "What is due", At(June11, 19)).Bikes);
        Assert.Equal("a", Assert.Single(bike.Done, d => d.Day == June11).Task);
        Assert.Empty(talk.Press(card, "What is due", At(June11, 20)).Bikes);

        var (at, again) = talk.Watch(At(June11, 20), At(June11.PlusDays(9), 0)).Single();
        Assert.Equal((At(June11.PlusDays(2), 18), "Due on your bike: b"), (at, again.Title));
    }

    [Fact]
    public void Weekend_OfWhatIsComingUp_IsSaidAtThatHourThoughItIsNotDue()
    {
        // Thursday the 11th; b is expected on Monday.
        var talk = new Talk(Due("a", 11), Yard.Task("b", Yard.Calendar(44)) with { Called = "b", Does = "do b" }).Fresh();
        talk.Bikes = [talk.Bikes[0] with { Done = [.. talk.Bikes[0].Done.Select(d => d.Task == "b" ? d with { Day = new LocalDate(2026, 5, 2) } : d)] }];
        talk.Press(talk.Look(June11, 18)!, "Saturday", At(June11, 18));
        talk.Bikes = [talk.Bikes[0].Did(June11, "a")];

        var (at, card) = Assert.Single(talk.Watch(At(June11, 18), At(June11.PlusDays(9), 0)));

        Assert.Equal((At(June11.PlusDays(2), 10), "Coming up on your bike: b"), (at, card.Title));
    }

    [Fact]
    public void Decide_ThreeDigestsInAWeek_WhatDoesNotPressWaitsForTheFirstToBeAWeekOld()
    {
        var talk = new Talk(Pressing("a", 3), Pressing("b", 4), Pressing("c", 5), Due("d", 7)).Fresh();

        for (var day = June3; day <= June3.PlusDays(2); day = day.PlusDays(1))
        {
            Assert.NotNull(talk.Look(day, 18));
            talk.Rider = Nudger.Heard(talk.Rider, At(day, 19));
        }

        Assert.Equal(At(June3.PlusDays(7), 18), Assert.Single(talk.Watch(At(June3.PlusDays(3), 0), At(June3.PlusDays(20), 0))).At);
    }

    [Fact]
    public void GoOn_AfterTheQuestion_WhatWasDueIsToldTheNextDay()
    {
        var talk = new Talk(Pressing("a", 3), Pressing("b", 5), Due("c", 8)).Fresh();
        var sent = talk.Watch(At(June3, 0), At(June3.PlusDays(7), 0));
        Assert.Equal("Shall I go on reminding you?", sent[^1].Card.Title);
        talk.Press(sent[^1].Card, "Go on", At(June3.PlusDays(7), 0));

        Assert.Equal("Due on your bike: c", talk.Look(June3.PlusDays(7), 18)!.Title);
    }

    [Fact]
    public void Decide_DigestOfAClockThatWasFarAhead_HoldsNothingBack()
    {
        var talk = new Talk(Due("b", 9)).Fresh();
        talk.Rider = talk.Rider with { Told = [new Told("gone", June3.PlusDays(9000))] };

        Assert.NotNull(talk.Look(new LocalDate(2026, 6, 9), 18));
    }

    [Fact]
    public void CatchUp_RestoredFromBeforeADigestThatToldAhead_TellsThatNotAgain()
    {
        var talk = new Talk(Due("a", 11), Due("b", 13)).Fresh();
        var backup = talk.Rider;
        var last = talk.Watch(At(June11, 0), At(June11, 23)).Single().At;
        talk.Rider = Nudger.CatchUp(backup, talk.Bikes, talk.Knowledge, talk.ClubZone, last, At(June11.PlusDays(1), 1));

        Assert.Empty(talk.Watch(At(June11.PlusDays(1), 1), At(June11.PlusDays(20), 0)));
    }
}
