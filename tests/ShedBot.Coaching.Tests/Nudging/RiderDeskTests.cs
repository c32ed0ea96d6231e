using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>The shell of reminders, on a store in memory. What is decided is tested beside the core.</summary>
public sealed class RiderDeskTests : IDisposable
{
    private static readonly MemberId Member = new("m1");
    private readonly Shelf shelf = new();
    private readonly Talk talk = new Talk(Due("grease", 3), Pressing("spokes", 5)).Fresh();
    private readonly RiderDesk desk;

    public RiderDeskTests()
    {
        desk = new RiderDesk(shelf, shelf, Bench.Serving(() => talk.Knowledge), (_, _) => ValueTask.FromResult("Europe/Lisbon"));
        shelf.Bikes[talk.Bikes[0].Id] = talk.Bikes[0] with { Version = 1 };
    }

    public void Dispose() => desk.Dispose();

    [Fact]
    public async Task RoundAsync_SomethingIsDue_KeepsOneMessageAndTellsWhoHasIt()
    {
        Agreed();
        Assert.Equal([Member], (await desk.RoundAsync(At(June3, 18), default)).Told.AsEnumerable());
        var message = Assert.Single(shelf.Unsaid);
        Assert.Equal(("nudge/m1/2026-06-03", "nudge/m1"), (message.Id, message.Place));
        Assert.Equal(At(June3, 18), shelf.Riders[Member].LastAt);
    }

    [Fact]
    public async Task RoundAsync_OneMessageWaitsStill_HeapsUpNothing()
    {
        Agreed();
        await desk.RoundAsync(At(June3, 18), default);
        shelf.Riders[Member] = shelf.Riders[Member] with { NextLook = At(June3.PlusDays(2), 18) };
        var saves = shelf.Saves;
        Assert.Equal([Member], (await desk.RoundAsync(At(June3.PlusDays(2), 18), default)).Told.AsEnumerable());
        Assert.Equal((1, saves), (shelf.Unsaid.Count, shelf.Saves));

        await shelf.MarkSaidAsync(shelf.Unsaid[0].Id, default);
        await desk.RoundAsync(At(June3.PlusDays(2), 18), default);
        Assert.Equal("nudge/m1/2026-06-05", Assert.Single(shelf.Unsaid).Id);
    }

    [Fact]
    public async Task RoundAsync_NobodysTimeHasCome_SavesNothing()
    {
        Agreed(look: At(June3, 18));
        Assert.Empty((await desk.RoundAsync(At(June3, 17, 59), default)).Told);
        Assert.Equal(0, shelf.Saves);
    }

    [Fact]
    public async Task RoundAsync_OneCannotBeSaved_TheOthersAreToldAll()
    {
        var others = Enumerable.Range(2, 40).Select(i => new MemberId("m" + i)).ToList();
        Agreed();
        foreach (var other in others)
        {
            shelf.Riders[other] = Agreed(other);
            var bike = talk.Bikes[0] with { Id = BikeId.Of(other), Owner = other };
            shelf.Bikes[bike.Id] = bike;
        }

        shelf.Broken.Add(others[7]);
        var round = await desk.RoundAsync(At(June3, 18), default);
        Assert.Equal(others[7], Assert.Single(round.Failed).Member);
        Assert.Equal(40, round.Told.Length);
        Assert.Equal(40, shelf.Unsaid.Select(m => m.Place).Distinct().Count());

        shelf.Broken.Clear();
        Assert.Equal([others[7]], (await desk.RoundAsync(At(June3, 18), default)).Told.AsEnumerable());
    }

    /// <summary>The member stopped all reminders while it was being decided.</summary>
    [Fact]
    public async Task RoundAsync_SomebodySavedFirst_DecidesAnew()
    {
        Agreed();
        shelf.Meanwhile = () => shelf.Riders[Member] = RiderWishes.Decline(shelf.Riders[Member], At(June3, 18));
        Assert.Empty((await desk.RoundAsync(At(June3, 18), default)).Told);
        Assert.Empty(shelf.Unsaid);
    }

    [Fact]
    public async Task AnswerAsync_Done_KeepsBikeAndMemberTogether()
    {
        Agreed();
        await desk.RoundAsync(At(June3, 18), default);
        var saves = shelf.Saves;
        var done = new NudgeAnswer(NudgeVerb.Done, June3, NudgeAnswer.ShortOf(talk.Bikes[0]), "grease");
        await desk.AnswerAsync(Member, done, At(June3, 19), default);
        Assert.Equal(saves + 1, shelf.Saves);
        Assert.Equal((0, 2), (shelf.Riders[Member].Unanswered, shelf.Bikes[talk.Bikes[0].Id].Done.Count(d => d.Task == "grease")));
        await desk.AnswerAsync(Member, done, At(June3, 19), default);
        Assert.Equal(2, shelf.Bikes[talk.Bikes[0].Id].Done.Count(d => d.Task == "grease"));
    }

    [Fact]
    public async Task AnswerAsync_TheBikeWasSavedFirst_TakesTheAnswerAnew()
    {
        Agreed();
        await desk.RoundAsync(At(June3, 18), default);
        var id = talk.Bikes[0].Id;
        shelf.Meanwhile = () => shelf.Bikes[id] = shelf.Bikes[id] with { Name = "Blue", Version = shelf.Bikes[id].Version + 1 };
        await desk.AnswerAsync(Member, new NudgeAnswer(NudgeVerb.AllDone, June3), At(June3, 19), default);
        Assert.Equal(("Blue", 3), (shelf.Bikes[id].Name, shelf.Bikes[id].Version));
        Assert.Contains(shelf.Bikes[id].Done, d => d.Task == "grease" && d.Day == June3);
    }

    [Fact]
    public async Task AnswerAsync_NotRidingTillADay_RestsTillThen()
    {
        Agreed();
        await desk.AnswerAsync(Member, new NudgeAnswer(NudgeVerb.NotRiding, June3), At(June3, 19), default, June3.PlusDays(10));
        Assert.Equal(June3.PlusDays(10), shelf.Bikes[talk.Bikes[0].Id].Riding.BreakOn(June3.PlusDays(1))!.Until);
    }

    [Fact]
    public async Task HandleAsync_AWish_IsKeptAndShown()
    {
        var card = await desk.HandleAsync(Member, new RemindMe(new LocalTime(17, 30)), At(June3, 12), default);
        Assert.Equal("Reminders are on", card.Title);
        Assert.Contains("around 17:30", Samples.Talk.Text(card), StringComparison.Ordinal);
        Assert.Equal((Consent.Given, 1), (shelf.Riders[Member].Consent, shelf.Riders[Member].Version));
    }

    [Fact]
    public async Task HandleAsync_Show_SavesNothing()
    {
        Assert.Equal("Reminders are off", (await desk.HandleAsync(Member, new ShowReminders(), At(June3, 12), default)).Title);
        Assert.Equal(0, shelf.Saves);
    }

    [Fact]
    public async Task HandleAsync_ABadWish_SaysWhyAndSavesNothing()
    {
        var card = await desk.HandleAsync(Member, new LiveIn("Mars/Olympus"), At(June3, 12), default);
        Assert.Equal("Not changed", card.Title);
        Assert.Equal(0, shelf.Saves);
    }

    [Fact]
    public async Task BesideAsync_WhereSomethingWasNoted_AsksOnceForEver()
    {
        Assert.Null(await desk.BesideAsync(Member, mayAsk: false, At(June3, 12), default));
        Assert.Equal("Shall I remind you?", (await desk.BesideAsync(Member, mayAsk: true, At(June3, 12), default))!.Title);
        Assert.Null(await desk.BesideAsync(Member, mayAsk: true, At(June3.PlusDays(30), 12), default));
        Assert.Equal((Consent.Asked, 1), (shelf.Riders[Member].Consent, shelf.Saves));
    }

    [Fact]
    public async Task RefusedAsync_WhereNoPlaceWasChosen_LeavesANoteForTheNextCommand()
    {
        Agreed();
        await desk.RefusedAsync(Member, At(June3, 18), default);
        await desk.RefusedAsync(Member, At(June3, 18), default);
        Assert.Equal(1, shelf.Saves);
        Assert.Equal("A reminder did not reach you", (await desk.BesideAsync(Member, mayAsk: false, At(June3, 20), default))!.Title);
        Assert.Null(await desk.BesideAsync(Member, mayAsk: true, At(June3, 20), default));
        Assert.Empty(shelf.Unsaid);
    }

    [Fact]
    public async Task RefusedAsync_InThePlaceTheyChose_IsMentionedOnce()
    {
        Agreed();
        await desk.HandleAsync(Member, new MentionMe("channel/1"), At(June3, 12), default);
        await desk.RefusedAsync(Member, At(June3, 18), default);
        await desk.RefusedAsync(Member, At(June3, 19), default);
        Assert.Equal("I could not write to you", Assert.Single(shelf.Unsaid).Card.Title);
        Assert.Null(await desk.BesideAsync(Member, mayAsk: true, At(June3, 20), default));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 1)]
    public async Task HeardAsync_OnlyAfterSilence_IsWrittenDown(int unanswered, int saves)
    {
        Agreed();
        shelf.Riders[Member] = shelf.Riders[Member] with { Unanswered = unanswered, Silent = unanswered > 0 };
        await desk.HeardAsync(Member, At(June3, 12), default);
        Assert.Equal((saves, false, 0), (shelf.Saves, shelf.Riders[Member].Silent, shelf.Riders[Member].Unanswered));
    }

    [Fact]
    public async Task HeardAsync_OfSomebodyUnknown_KeepsNothing()
    {
        await desk.HeardAsync(Member, At(June3, 12), default);
        Assert.Empty(shelf.Riders);
    }

    [Fact]
    public async Task CatchUpAsync_AfterARestore_DoesNotTellAgain()
    {
        Agreed();
        var before = shelf.Riders[Member];
        await desk.RoundAsync(At(June3, 18), default);
        shelf.Riders[Member] = before;
        shelf.Unsaid.Clear();
        await desk.CatchUpAsync(Member, At(June3, 18), At(June3, 19), default);
        await desk.CatchUpAsync(Member, At(June3, 18), At(June3, 19), default);
        await desk.RoundAsync(At(June3.PlusDays(1), 18), default);
        Assert.Empty(shelf.Unsaid);
        await desk.RoundAsync(At(June3.PlusDays(2), 18), default);
        Assert.Contains("spokes", Assert.Single(shelf.Unsaid).Card.Title, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, true)]
    [InlineData(21, false)]
    [InlineData(7, false)]
    [InlineData(8, true)]
    public async Task MaySendAsync_GoesByTheMembersOwnQuietHours(int hour, bool may)
    {
        Agreed();
        shelf.Riders[Member] = shelf.Riders[Member] with { Zone = "Asia/Kathmandu" };
        Assert.Equal(may, await desk.MaySendAsync(Member, At(June3, hour, 0, "Asia/Kathmandu"), default));
    }

    private void Agreed(DateTimeOffset? look = null) => shelf.Riders[Member] = Agreed(Member) with { NextLook = look ?? At(June3, 8) };

    private static Rider Agreed(MemberId member) => Rider.New(member) with { Consent = Consent.Given, NextLook = At(June3, 8), Version = 1 };
}
