using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises of what a club learns from: its closed cases, and words that were not understood.</summary>
public abstract class CountingContract : TeachingContract
{
    [Fact]
    public async Task ClosedCases_OfOneClub_AreFoundLastClosedFirstWithOutcomeAndBike()
    {
        await CloseAsync("a", "12/1", minute: 5);
        await CloseAsync("b", "12/2", minute: 9, phase: CasePhase.Left);
        await CloseAsync("c", "12/1", minute: 7);
        await CloseAsync("d", "120/1", minute: 8);
        await CloseAsync("e", "1/2", minute: 8);
        await Shed.SaveAsync(Sample.Opened("open", "12/1").Next().Saying(), Ct);
        await ReopenAsync();

        var closed = await Teaching.ClosedCasesAsync(Twelve, 20_000, Ct);

        Assert.Equal(["b", "c", "a"], closed.Select(c => c.Case.Id.Value));
        Same.Assert((await Shed.FindCaseAsync(new CaseId("c"), Ct))!, closed[1].Case);
        Same.Assert(closed[1].Case.OutcomeOf(), closed[1].Outcome);
        Assert.Equal(new BikeId("12/1-bike"), closed[1].Bike!.Id);
        Assert.Null(closed[0].Bike);
        Assert.Equal(["b", "c"], (await Teaching.ClosedCasesAsync(Twelve, 2, Ct)).Select(c => c.Case.Id.Value));
    }

    [Fact]
    public async Task ClosedCases_OfMembersOfNoClub_AreThoseOfPractice()
    {
        await CloseAsync("a", "wren", minute: 5);
        await CloseAsync("b", "practice", minute: 6);
        await CloseAsync("c", "12/1", minute: 7);

        Assert.Equal(["b", "a"], (await Teaching.ClosedCasesAsync(ClubId.Practice, 10, Ct)).Select(c => c.Case.Id.Value));
    }

    [Fact]
    public async Task ClosedCases_CameBack_IsThereOnceItIsClosedAgainWithItsNewestOutcome()
    {
        var solved = await CloseAsync("a", "12/1", minute: 5);
        var back = solved.Next("came back");
        await Shed.SaveAsync(back.Saying(), Ct);
        Assert.Empty(await Teaching.ClosedCasesAsync(Twelve, 10, Ct));

        var again = back.Next("held", CasePhase.Left);
        await Shed.SaveAsync(again.Saying() with { Outcome = again.OutcomeOf() with { Repair = "another" } }, Ct);

        var closed = Assert.Single(await Teaching.ClosedCasesAsync(Twelve, 10, Ct));
        Assert.Equal(("another", CasePhase.Left), (closed.Outcome.Repair, closed.Outcome.Phase));
    }

    [Fact]
    public async Task Unheard_OfTwoClubs_IsFoundNewestFirstByItsOwn()
    {
        await SayAsync("a", Unheard("it goes brr"));
        await SayAsync("b", Unheard("wobbly", "13/1", "arm-free-play"));
        await SayAsync("c", Unheard("it goes brrr", "12/2"));
        await SayAsync("d", Unheard("hm", "wren"));
        await ReopenAsync();

        Same.Assert([Unheard("it goes brrr", "12/2"), Unheard("it goes brr")], (await Teaching.UnheardAsync(Twelve, 2_000, Ct)).ToArray());
        Same.Assert([Unheard("wobbly", "13/1", "arm-free-play")], (await Teaching.UnheardAsync(Thirteen, 10, Ct)).ToArray());
        Assert.Equal("hm", Assert.Single(await Teaching.UnheardAsync(ClubId.Practice, 10, Ct)).Words);
        Assert.Equal("it goes brrr", Assert.Single(await Teaching.UnheardAsync(Twelve, 1, Ct)).Words);
    }

    [Fact]
    public async Task Unheard_TurnSavedTwiceOrRefused_IsKeptOnce()
    {
        var turn = Sample.Opened("a", "12/1").Next().Saying("What?") with { Unheard = Unheard("brr") };
        await Shed.SaveAsync(turn, Ct);
        await Shed.SaveAsync(turn, Ct);
        await Assert.ThrowsAsync<StaleSaveException>(() => Shed.SaveAsync(Sample.Opened("a", "12/1").Next("no").Saying() with { Unheard = Unheard("late") }, Ct));

        Assert.Equal("brr", Assert.Single(await Teaching.UnheardAsync(Twelve, 10, Ct)).Words);
    }

    [Fact]
    public async Task Unheard_OfAnotherClubOrTooLong_IsRefused()
    {
        foreach (var wrong in new[] { Unheard("brr", "13/1"), Unheard(""), Unheard(new string('b', UnheardWords.Longest + 1)) })
        {
            await Assert.ThrowsAnyAsync<ArgumentException>(() => SayAsync("a", wrong, "12/1"));
        }

        // A helper's words, in the case of another of the club.
        await SayAsync("a", Unheard(new string('b', UnheardWords.Longest), "12/2"), "12/1");
    }

    [Fact]
    public async Task AddUnheard_OutsideOfACase_IsFoundWithTheOthersOfItsClub()
    {
        await SayAsync("a", Unheard("it goes brr"));
        await Teaching.AddUnheardAsync(Unheard("it goes brrr", "12/2"), Ct);
        await Teaching.AddUnheardAsync(Unheard("elsewhere", "13/1"), Ct);
        foreach (var wrong in new[] { Unheard(""), Unheard(new string('b', UnheardWords.Longest + 1)) })
        {
            await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.AddUnheardAsync(wrong, Ct));
        }

        await ReopenAsync();

        Same.Assert([Unheard("it goes brrr", "12/2"), Unheard("it goes brr")], (await Teaching.UnheardAsync(Twelve, 10, Ct)).ToArray());
    }

    [Fact]
    public async Task DropUnheard_SameWords_DropsThemWhoeverSaidThemHowever()
    {
        foreach (var (n, words) in new[] { "it goes Brr", " IT GOES BRR ", "it goes brrr", "Ölig" }.Index())
        {
            await SayAsync($"{n}", Unheard(words, $"12/{n}"));
        }

        await SayAsync("other", Unheard("it goes brr", "13/1"));

        await Teaching.DropUnheardAsync(Twelve, "  it goes brr", Ct);
        await Teaching.DropUnheardAsync(Twelve, "öLIG", Ct);
        await Teaching.DropUnheardAsync(Twelve, "", Ct);

        Assert.Equal(["it goes brrr"], (await Teaching.UnheardAsync(Twelve, 10, Ct)).Select(u => u.Words));
        Assert.Single(await Teaching.UnheardAsync(Thirteen, 10, Ct));
    }

    /// <param name="member">Whose case it is said in; without one it is their own.</param>
    private Task SayAsync(string id, UnheardWords words, string? member = null) =>
        Shed.SaveAsync(Sample.Opened(id, member ?? words.Member.Value).Next().Saying() with { Unheard = words }, Ct);

    private async Task<Case> CloseAsync(string id, string member, int minute, CasePhase phase = CasePhase.Solved)
    {
        var at = Sample.Noon.AddMinutes(minute);
        var closed = Sample.Opened(id, member).Next(phase: phase) with { LastTurnAt = at, ClosedAt = at };
        var bike = phase == CasePhase.Solved && await Shed.FindBikeAsync(closed.Bike, Ct) is null ? closed.BikeOf().Next() : null;
        await Shed.SaveAsync(closed.Saying() with { Bike = bike, Outcome = closed.OutcomeOf() }, Ct);
        return closed;
    }
}
