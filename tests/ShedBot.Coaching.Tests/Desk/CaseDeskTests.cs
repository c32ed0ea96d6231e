using Moq;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Desk;

public sealed class CaseDeskTests
{
    private static readonly MemberId Member = new("m1");

    [Fact]
    public async Task HandleAsync_FirstWords_SavesCaseAndWhatIsToBeSaidTogether()
    {
        var store = Empty();
        var saved = Saves(store);
        using var desk = Desk(store);
        await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        var turn = Assert.Single(saved);
        Assert.Equal(1, turn.Case.Version);
        Assert.Equal("c1.0001.0", Assert.Single(turn.Say).Id);
        Assert.Equal("Is the tap at the tank open?", turn.Say[0].Card.Title);
    }

    [Fact]
    public async Task HandleAsync_SomebodySavedFirst_ReadsAgainAndTakesTheTurnAnew()
    {
        var store = Empty();
        var tries = 0;
        store.Setup(s => s.SaveAsync(It.IsAny<TurnSaved>(), default))
            .Returns(() => ++tries == 1 ? throw new StaleSaveException("The case") : Task.CompletedTask);
        using var desk = Desk(store);
        await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        Assert.Equal(2, tries);
        store.Verify(s => s.FindOpenCaseAsync(Member, "here", default), Times.Exactly(2));
    }

    [Fact]
    public async Task HandleAsync_StaleForEver_GivesUpInsteadOfSpinning()
    {
        var store = Empty();
        store.Setup(s => s.SaveAsync(It.IsAny<TurnSaved>(), default)).ThrowsAsync(new StaleSaveException("The case"));
        using var desk = Desk(store);
        await Assert.ThrowsAsync<StaleSaveException>(() => desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default));
    }

    [Fact]
    public async Task HandleAsync_EventAnsweredBefore_SavesNothing()
    {
        var talk = new Talk().Say("no water comes out");
        var store = Empty();
        var saved = Saves(store);
        store.Setup(s => s.FindOpenCaseAsync(Member, "here", default)).ReturnsAsync(talk.Case);
        using var desk = Desk(store);
        await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        Assert.Empty(saved);
    }

    [Fact]
    public async Task HandleAsync_WordsAfterAClosedCase_OpenANewCaseForTheSameBike()
    {
        var talk = new Talk().Say("no water comes out").Say("forget it");
        var store = Empty();
        var saved = Saves(store);
        store.Setup(s => s.FindLastCaseAsync(Member, "here", default)).ReturnsAsync(talk.Case);
        store.Setup(s => s.FindBikeAsync(talk.Case.Bike, default)).ReturnsAsync(BikeProfile.New(talk.Case.Bike, Member));
        using var desk = Desk(store, "c2");
        await desk.HandleAsync(Member, "here", new MemberSaid("e9", "it hums very loud"), default);
        Assert.Equal(new CaseId("c2"), Assert.Single(saved).Case.Id);
        Assert.Equal(talk.Case.Bike, saved[0].Case.Bike);
    }

    [Fact]
    public async Task HandleAsync_CameBackPressedInTheOlderOfTwoPlaces_BelongsToTheCaseSolvedThere()
    {
        var solved = new Talk().Say("no water comes out").Pick("It is shut").Pick("Yes").Pick("Done").Pick("It holds");
        Assert.Equal(CasePhase.Solved, solved.Case.Phase);
        var cameBack = solved.Last.Options.Single(o => o.Label == "It came back").Id;
        var elsewhere = Case.New(new CaseId("c2"), Member, solved.Case.Bike, "there", Pump.Noon.AddHours(1));
        var store = Empty();
        var saved = Saves(store);
        store.Setup(s => s.CasesOfAsync(Member, It.IsAny<int>(), default)).ReturnsAsync((MemberId _, int most, CancellationToken _) =>
            [.. new[] { elsewhere, solved.Case }.Take(most)]);
        store.Setup(s => s.FindOpenCaseAsync(Member, "there", default)).ReturnsAsync(elsewhere);
        store.Setup(s => s.FindLastCaseAsync(Member, "there", default)).ReturnsAsync(elsewhere);
        store.Setup(s => s.FindLastCaseAsync(Member, "here", default)).ReturnsAsync(solved.Case);
        store.Setup(s => s.FindBikeAsync(solved.Case.Bike, default)).ReturnsAsync(solved.Bike);
        using var desk = Desk(store, "c3");

        await desk.HandleAsync(Member, "here", new MemberChose("e20", cameBack), default);

        var turn = Assert.Single(saved);
        Assert.Equal((solved.Case.Id, "here"), (turn.Case.Id, turn.Case.Place));
        Assert.Contains(turn.Case.Entries, e => e.Kind == EntryKind.CameBack);
    }

    [Fact]
    public async Task HandleAsync_AnyAnswer_KnowsWhichEventItAnswers()
    {
        var store = Empty();
        var saved = Saves(store);
        using var desk = Desk(store);
        await desk.HandleAsync(Member, "here", new MemberSaid("e7", "no water comes out"), default);
        Assert.All(Assert.Single(saved).Say, m => Assert.Equal("e7", m.Answers));
    }

    /// <summary>Words closed a case and another was begun in the same place: the same words coming again belong to the first.</summary>
    [Fact]
    public async Task HandleAsync_EventOfAnEarlierCaseInThisPlace_CountsOnce()
    {
        var earlier = new Talk().Say("no water comes out").Case;
        var newer = Case.New(new CaseId("c2"), Member, earlier.Bike, "here", Pump.Noon.AddHours(1));
        var store = Empty();
        var saved = Saves(store);
        store.Setup(s => s.CasesOfAsync(Member, It.IsAny<int>(), default)).ReturnsAsync([newer, earlier with { Place = "here" }]);
        store.Setup(s => s.FindOpenCaseAsync(Member, "here", default)).ReturnsAsync(newer);
        using var desk = Desk(store, "c3");

        var after = await desk.HandleAsync(Member, "here", new MemberSaid(earlier.Handled[^1], "no water comes out"), default);

        Assert.Empty(saved);
        Assert.Equal(earlier.Id, after.Id);
    }

    [Fact]
    public async Task HandleAsync_TroubleFoundOnAnotherBike_OpensACaseForThatBike()
    {
        var other = new BikeId("m1/second");
        var open = new Talk().Say("no water comes out").Case;
        var store = Empty();
        var saved = Saves(store);
        store.Setup(s => s.FindOpenCaseAsync(Member, "here", default)).ReturnsAsync(open);
        store.Setup(s => s.FindBikeAsync(other, default)).ReturnsAsync(BikeProfile.New(other, Member) with { Name = "the old one" });
        using var desk = Desk(store, "c2");
        await desk.HandleAsync(Member, "here", new TroubleFound("e9", other, "hums"), default);
        var turn = Assert.Single(saved);
        Assert.Equal((new CaseId("c2"), other), (turn.Case.Id, turn.Case.Bike));
        Assert.Contains(turn.Case.Entries, e => e is { Kind: EntryKind.Complaint, Subject: "hums" });
    }

    /// <summary>What is due can change with the bike, and a turn ends silence: both in the save of the turn. Otherwise the member is left as they are.</summary>
    [Theory]
    [InlineData(Consent.Given, 2, true)]
    [InlineData(Consent.Given, 0, false)]
    [InlineData(Consent.NotAsked, 2, false)]
    public async Task HandleAsync_AMemberWhoAgreed_IsHeardInTheSameSave(Consent consent, int unanswered, bool heard)
    {
        var shelf = new Shelf();
        shelf.Riders[Member] = Rider.New(Member) with { Consent = consent, Unanswered = unanswered, Silent = unanswered > 0, Version = 4 };
        using var desk = new CaseDesk(shelf, shelf, new OneCoach(() => Pump.Coach), new Stopped(), () => "c1");
        await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        Assert.Equal((1, heard ? 5 : 4), (shelf.Saves, shelf.Riders[Member].Version));
        if (heard) Assert.Equal((0, false, Pump.Noon), (shelf.Riders[Member].Unanswered, shelf.Riders[Member].Silent, shelf.Riders[Member].NextLook));
    }

    [Fact]
    public async Task HandleAsync_ARepairHeldForAMemberWhoAgreed_BringsTheNextLookForward()
    {
        var shelf = new Shelf();
        shelf.Riders[Member] = Rider.New(Member) with { Consent = Consent.Given, Version = 1, NextLook = Pump.Noon.AddDays(5) };
        using var desk = new CaseDesk(shelf, shelf, new OneCoach(() => Pump.Coach), new Stopped(), () => "c1");
        await desk.HandleAsync(Member, "here", new MemberSaid("e0", "no water comes out"), default);
        Assert.Equal(Pump.Noon.AddDays(5), shelf.Riders[Member].NextLook);
        foreach (var label in new[] { "It is shut", "Yes", "Done", "It holds" })
            await desk.HandleAsync(Member, "here", new MemberChose("e" + label, shelf.Unsaid[^1].Card.Options.First(o => o.Label.StartsWith(label, StringComparison.Ordinal)).Id), default);
        Assert.Single(shelf.Bikes[BikeId.Of(Member)].Work);
        Assert.Equal(Pump.Noon, shelf.Riders[Member].NextLook);
    }

    /// <summary>The member stopped all reminders while the turn was taken: that stands.</summary>
    [Fact]
    public async Task HandleAsync_TheMemberWasSavedFirst_TakesTheTurnAnew()
    {
        var shelf = new Shelf();
        shelf.Riders[Member] = Rider.New(Member) with { Consent = Consent.Given, Unanswered = 1, Version = 1 };
        shelf.Meanwhile = () => shelf.Riders[Member] = RiderWishes.Decline(shelf.Riders[Member], Pump.Noon);
        using var desk = new CaseDesk(shelf, shelf, new OneCoach(() => Pump.Coach), new Stopped(), () => "c1");
        var after = await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        Assert.Equal((1, 1, Consent.Withheld), (after.Turn, shelf.Unsaid.Count, shelf.Riders[Member].Consent));
    }

    [Fact]
    public async Task HandleAsync_TheFirstWordsOfWhoHasSeveralBikes_AreOfTheOneInUseAndItIsSaid()
    {
        var shelf = new Shelf();
        var (red, blue) = (BikeProfile.New(BikeId.Of(Member), Member) with { Name = "red" }, BikeProfile.New(new BikeId("m1/bike-b"), Member) with { Name = "blue" });
        (shelf.Bikes[red.Id], shelf.Bikes[blue.Id]) = (red, blue);
        shelf.Riders[Member] = Rider.New(Member) with { Bike = blue.Id, Version = 1 };
        var cases = 0;
        using var desk = new CaseDesk(shelf, shelf, new OneCoach(() => Pump.Coach), new Stopped(), () => $"c{++cases}", "say so");

        Assert.Equal(blue.Id, (await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default)).Bike);
        Assert.Contains("I take it to be about blue. If it is another bike: say so.", Talk.Text(shelf.Unsaid[0].Card), StringComparison.Ordinal);

        await desk.HandleAsync(Member, "here", new MemberSaid("e2", "yes"), default);
        Assert.DoesNotContain("about blue", Talk.Text(shelf.Unsaid[^1].Card), StringComparison.Ordinal);
        Assert.Equal(red.Id, (await desk.HandleAsync(Member, "there", new MemberSaid("e3", "no water comes out"), default, red.Id)).Bike);
    }

    [Fact]
    public async Task HandleAsync_TheFirstWordsOfWhoHasOneBike_NameNone()
    {
        var shelf = new Shelf();
        shelf.Bikes[BikeId.Of(Member)] = BikeProfile.New(BikeId.Of(Member), Member) with { Name = "red" };
        using var desk = new CaseDesk(shelf, shelf, new OneCoach(() => Pump.Coach), new Stopped(), () => "c1");
        await desk.HandleAsync(Member, "here", new MemberSaid("e1", "no water comes out"), default);
        Assert.DoesNotContain("red", Talk.Text(shelf.Unsaid[0].Card), StringComparison.Ordinal);
    }

    private static Mock<IShedStore> Empty()
    {
        var store = new Mock<IShedStore>();
        store.Setup(s => s.CasesOfAsync(It.IsAny<MemberId>(), It.IsAny<int>(), default)).ReturnsAsync([]);
        store.Setup(s => s.BikesOfAsync(It.IsAny<MemberId>(), default)).ReturnsAsync([]);
        return store;
    }

    private static List<TurnSaved> Saves(Mock<IShedStore> store)
    {
        var saved = new List<TurnSaved>();
        store.Setup(s => s.SaveAsync(It.IsAny<TurnSaved>(), default)).Callback<TurnSaved, CancellationToken>((t, _) => saved.Add(t)).Returns(Task.CompletedTask);
        return saved;
    }

    private static CaseDesk Desk(Mock<IShedStore> store, string id = "c1") => new(store.Object, Mock.Of<IRiderStore>(), new OneCoach(() => Pump.Coach), new Stopped(), () => id);

    private sealed class Stopped : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Pump.Noon;
    }
}
