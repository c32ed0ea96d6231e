using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Service;
using ShedBot.Knowledge.Rules;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>The rules of docs/nudges.md about what is said and when. Common practice, no source.</summary>
public sealed class PolicyTests
{
    [Theory]
    [InlineData(Consent.NotAsked)]
    [InlineData(Consent.Asked)]
    [InlineData(Consent.Withheld)]
    public void Decide_WithoutConsent_SaysNothingAndIsNotLookedAtAgain(Consent consent)
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.Rider = talk.Rider with { Consent = consent };

        Assert.Null(talk.Look(June3, 18));
        Assert.Null(talk.Rider.NextLook);
        Assert.Equal(WithheldFor.NoConsent, Assert.Single(talk.Last.Withheld).Why);
    }

    [Fact]
    public void AskOnce_AskedBefore_IsNotAskedAgain()
    {
        var asked = Taking.AskOnce(Rider.New(new MemberId("m")), "Europe/Lisbon", At(June3, 12))!;

        Assert.Equal(["Yes, remind me", "No, thanks"], asked.Say.Options.Select(o => o.Label));
        Assert.Null(Taking.AskOnce(asked.Rider, "Europe/Lisbon", At(June3, 13)));
    }

    [Fact]
    public void Agree_SomethingDue_IsToldAtTheNextDecentHour()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.Rider = talk.Rider with { Consent = Consent.NotAsked };
        var asked = Taking.AskOnce(talk.Rider, talk.ClubZone, At(June3, 12))!;
        talk.Rider = asked.Rider;
        talk.Press(asked.Say, "Yes", At(June3, 12));

        Assert.Null(talk.Look(June3, 12));
        Assert.Equal(At(June3, 18), talk.Rider.NextLook);
        Assert.NotNull(talk.Look(talk.Rider.NextLook!.Value));
    }

    [Fact]
    public void Decide_BeforeTheExpectedDay_SaysNothing()
    {
        var talk = new Talk(Due("grease", 5)).Fresh();

        var (at, _) = Assert.Single(talk.Watch(At(June3, 0), At(June3.PlusDays(4), 0)));

        Assert.Equal(At(June3.PlusDays(2), 18), at);
    }

    [Fact]
    public void Decide_SeveralDue_MakeOneDigestThatNamesAHandfulAndCountsTheRest()
    {
        var talk = new Talk([.. Enumerable.Range(1, 8).Select(i => Due($"task-{i}", 3))]).Fresh();

        var card = talk.Look(June3, 18)!;

        Assert.Equal("8 things are due on your bike", card.Title);
        Assert.Equal(5, card.Blocks.OfType<ListBlock>().Single().Items.Length);
        Assert.Contains(card.Blocks.OfType<TextBlock>(), b => b.Text.StartsWith("And 3 more", StringComparison.Ordinal));
        Assert.Equal(8, talk.Last.Say!.DueKeys.Length);
        Assert.Empty(talk.Watch(At(June3, 18), At(June3.PlusDays(30), 18)));
    }

    [Fact]
    public void Decide_DigestOrder_IsDangerThenOverdueThenSoonest()
    {
        var danger = Due("frame", 20) with { Cautions = [new CautionRule("DANGER", "a crack", "it breaks", "do not ride it")] };
        var talk = new Talk(Due("late", 4), Due("early", 19), danger, Due("brake", 20) with { Hazard = "medium" }).Fresh();

        var items = talk.Look(new LocalDate(2026, 6, 20), 18)!.Blocks.OfType<ListBlock>().Single().Items;

        Assert.Equal(["do frame", "do brake", "do late", "do early"], items.Select(i => i[..i.IndexOf(" (", StringComparison.Ordinal)]));
    }

    [Fact]
    public void Decide_TwoBikes_MakeOneDigestThatSaysWhich()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.Bikes = [talk.Bikes[0] with { Name = "Heron" }, talk.Bikes[0] with { Id = new BikeId("b2"), Name = "Wren" }];

        var items = talk.Look(June3, 18)!.Blocks.OfType<ListBlock>().Single().Items;

        Assert.Equal(["do grease on Heron", "do grease on Wren"], items.Select(i => i[..i.IndexOf(" (", StringComparison.Ordinal)]));
    }

    [Fact]
    public void Decide_ToldOnce_IsNeverToldAgainHoweverLongOverdueButCounted()
    {
        var talk = new Talk(Due("grease", 3), Due("spokes", 20)).Fresh();

        var sent = talk.Watch(At(June3, 0), At(June3.PlusDays(60), 0));

        Assert.Equal(["Due on your bike: grease", "Due on your bike: spokes"], sent.Select(s => s.Card.Title));
        Assert.Contains(sent[1].Card.Blocks.OfType<TextBlock>(), b => b.Text == "Still open from before: 1.");
    }

    [Fact]
    public void Decide_DoneAndTakenBack_IsNotToldAgain()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        var card = talk.Look(June3, 18)!;
        var before = talk.Bikes;
        talk.Press(card, "Done", At(June3, 19));
        talk.Look(June3.PlusDays(1), 18);
        talk.Bikes = before;

        Assert.Empty(talk.Watch(At(June3.PlusDays(1), 18), At(June3.PlusDays(9), 18)));
    }

    [Fact]
    public void Decide_AnotherDueTheSameDay_WaitsForTheNext()
    {
        var talk = new Talk(Due("grease", 3), Due("spokes", 3)).Fresh();
        var spokes = talk.Knowledge.Service["spokes"];
        var knowledge = talk.Knowledge;
        Assert.NotNull(Nudger.Decide(talk.Rider, talk.Bikes, knowledge with { Service = knowledge.Service.Remove("spokes") }, talk.ClubZone, At(June3, 18)) is { Say: not null } first
            ? talk.Rider = first.After : null);

        Assert.Null(talk.Look(June3, 19));
        Assert.Contains(talk.Last.Withheld, w => w.Why == WithheldFor.SpokenToday);
        Assert.Equal(At(June3.PlusDays(1), 18), talk.Rider.NextLook);
        Assert.Equal($"Due on your bike: {spokes.Called}", talk.Look(June3.PlusDays(1), 18)!.Title);
    }

    [Theory]
    [InlineData(18, 0, 18, 0)]
    [InlineData(23, 30, 8, 0)]
    [InlineData(3, 0, 8, 0)]
    [InlineData(8, 0, 8, 0)]
    public void Decide_PreferredTime_IsKeptAndGivesWayToQuietHours(int hour, int minute, int atHour, int atMinute)
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.Rider = talk.Rider.Prefer(new LocalTime(hour, minute), At(June3, 0));

        var (at, _) = Assert.Single(talk.Watch(At(June3, 0), At(June3.PlusDays(1), 0)));

        Assert.Equal(At(June3, atHour, atMinute), at);
    }

    [Fact]
    public void Decide_ProcessWasDownTillTheNight_WaitsForTheMorning()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();

        Assert.Null(talk.Look(June3, 22));
        Assert.Contains(talk.Last.Withheld, w => w.Why == WithheldFor.Quiet);
        Assert.Equal(At(June3.PlusDays(1), 8), talk.Rider.NextLook);
        Assert.Null(talk.Look(talk.Rider.NextLook!.Value));
        Assert.NotNull(talk.Look(June3.PlusDays(1), 18));
    }

    [Fact]
    public void Decide_NextLook_ComesNoLaterThanTheDueDay()
    {
        var talk = new Talk(Due("grease", 25)).Fresh();
        var now = At(June3, 12);
        for (var looks = 0; looks < 10 && talk.Look(now) is null; looks++) now = talk.Rider.NextLook!.Value;

        Assert.Equal(At(new LocalDate(2026, 6, 25), 18), now);
    }

    [Fact]
    public void Decide_TwoDigestsUnanswered_AsksOnceAndThenIsSilentUntilHeardOf()
    {
        var talk = new Talk(Pressing("a", 3), Pressing("b", 5), Pressing("c", 7), Pressing("d", 9)).Fresh();

        var sent = talk.Watch(At(June3, 0), At(June3.PlusDays(40), 0));

        Assert.Equal(["Due on your bike: a", "Due on your bike: b", "Shall I go on reminding you?"], sent.Select(s => s.Card.Title));
        Assert.All(talk.Last.Withheld, w => Assert.Equal(WithheldFor.Silence, w.Why));
        Assert.Null(talk.Rider.NextLook);

        talk.Press(sent[2].Card, "Go on", At(June3.PlusDays(41), 12));
        Assert.Equal("2 things are due on your bike", talk.Look(June3.PlusDays(41), 18)!.Title);
    }

    [Fact]
    public void Heard_BetweenDigests_KeepsThemComing()
    {
        var talk = new Talk(Pressing("a", 3), Pressing("b", 5), Pressing("c", 7), Pressing("d", 9)).Fresh();
        var titles = new List<string>();
        for (var day = June3; day < June3.PlusDays(10); day = day.PlusDays(1))
        {
            if (talk.Look(day, 18) is { } card) titles.Add(card.Title);
            talk.Rider = Nudger.Heard(talk.Rider, At(day, 19));
        }

        Assert.Equal(["Due on your bike: a", "Due on your bike: b", "Due on your bike: c", "Due on your bike: d"], titles);
    }

    [Fact]
    public void Refused_PlaceChosen_IsMentionedThereOnceWithoutTellingAnything()
    {
        var talk = new Talk(Due("grease", 3), Due("spokes", 5)).Fresh();
        talk.Rider = talk.Rider.MentionIn("shed-talk");
        talk.Look(June3, 18);

        var (after, mention) = Fallback.Refused(talk.Rider, talk.ClubZone, At(June3, 18, 1));

        Assert.DoesNotContain("grease", CardJson.Write(mention!), StringComparison.Ordinal);
        Assert.Equal("nudge/m1", Fallback.Outbox(after, mention!, At(June3, 18, 1)).Place);
        Assert.Null(Fallback.Refused(after, talk.ClubZone, At(June3, 18, 2)).Mention);
        Assert.Null(Fallback.AtNextCommand(after, talk.ClubZone, At(June3, 19)).Note);
        talk.Rider = after;
        Assert.Empty(talk.Watch(At(June3, 19), At(June3.PlusDays(20), 18)));
        Assert.All(talk.Last.Withheld, w => Assert.Equal(WithheldFor.Refused, w.Why));
    }

    [Theory]
    [InlineData(null, 18)]
    [InlineData("shed-talk", 22)]
    public void Refused_NoPlaceOrQuiet_LeavesOneNoteForTheNextCommand(string? place, int hour)
    {
        var rider = (Rider.New(new MemberId("m")) with { Consent = Consent.Given }).MentionIn(place);

        var (after, mention) = Fallback.Refused(rider, "Europe/Lisbon", At(June3, hour));
        Assert.Null(mention);
        var (shown, note) = Fallback.AtNextCommand(after, "Europe/Lisbon", At(June3, 23));

        Assert.NotNull(note);
        Assert.Null(Fallback.AtNextCommand(shown, "Europe/Lisbon", At(June3, 23)).Note);
    }

    [Fact]
    public void Refused_MemberAsksAgain_IsTriedOnceMore()
    {
        var talk = new Talk(Due("grease", 3), Due("spokes", 5)).Fresh();
        talk.Look(June3, 18);
        talk.Rider = Fallback.Refused(talk.Rider, talk.ClubZone, At(June3, 18)).After;
        var (shown, note) = Fallback.AtNextCommand(talk.Rider, talk.ClubZone, At(June3.PlusDays(4), 12));
        talk.Rider = shown;
        talk.Press(note!, "Try again", At(June3.PlusDays(4), 12));

        Assert.Equal("Due on your bike: spokes", talk.Look(June3.PlusDays(4), 18)!.Title);
    }

    [Fact]
    public void Decide_NotRiding_IsWithheldUntilARideIsLogged()
    {
        var talk = new Talk(Due("grease", 5)).Fresh();
        talk.Answer(new NudgeAnswer(NudgeVerb.NotRiding, June3), At(June3, 19));

        Assert.Empty(talk.Watch(At(June3, 19), At(June3.PlusDays(20), 0)));
        Assert.Equal(WithheldFor.Resting, Assert.Single(talk.Last.Withheld).Why);

        var back = June3.PlusDays(20);
        talk.Bikes = [talk.Bikes[0].Rode(back)];
        talk.Rider = Nudger.Heard(talk.Rider, At(back, 12));
        Assert.NotNull(talk.Look(back, 18));
    }

    [Fact]
    public void Decide_NotRidingTillADay_IsToldOnThatDay()
    {
        var talk = new Talk(Due("grease", 5)).Fresh();
        talk.Answer(new NudgeAnswer(NudgeVerb.NotRiding, June3), At(June3, 19), June3.PlusDays(14));

        Assert.Equal(At(June3.PlusDays(14), 18), Assert.Single(talk.Watch(At(June3, 19), At(June3.PlusDays(20), 0))).At);
    }

    [Fact]
    public void Outbox_SameDayDecidedTwice_HasTheSameId()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        var one = Nudger.Decide(talk.Rider, talk.Bikes, talk.Knowledge, talk.ClubZone, At(June3, 18)).Outbox().Single();
        var two = Nudger.Decide(talk.Rider, talk.Bikes, talk.Knowledge, talk.ClubZone, At(June3, 19)).Outbox().Single();

        Assert.Equal(("nudge/m1/2026-06-03", "nudge/m1"), (one.Id, one.Place));
        Assert.Equal(one.Id, two.Id);
    }
}
