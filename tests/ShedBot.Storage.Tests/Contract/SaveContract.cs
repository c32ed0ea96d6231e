using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises about saves that meet each other, and about what is to be said.</summary>
public abstract class SaveContract : ShedStoreContract
{
    [Fact]
    public async Task Save_CaseReadBeforeSomebodyElseSaved_IsStaleAndChangesNothing()
    {
        var first = Sample.Opened().Next();
        await Store.SaveAsync(first.Saying("one"), Ct);
        var theirs = first.Next("theirs");
        await Store.SaveAsync(theirs.Saying("two") with { Bike = first.BikeOf().Next() }, Ct);

        // Same version, same turn, same message ids: only what was answered tells the two turns apart.
        var ours = first.Next("ours");
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveAsync(ours.Saying("our two"), Ct));

        Same.Assert(theirs, await Store.FindCaseAsync(first.Id, Ct));
        Assert.Equal(["one", "two"], (await Store.UnsaidAsync(first.Place, 10, Ct)).Words());
    }

    [Fact]
    public async Task Save_BikeReadBeforeSomebodyElseSaved_IsStaleAndKeepsNothingOfTheTurn()
    {
        var first = Sample.Opened("one", bike: "shared").Next();
        await Store.SaveAsync(first.Saying() with { Bike = first.BikeOf().Next() }, Ct);

        var second = Sample.Opened("two", bike: "shared").Next();
        var stale = second.Saying("lost") with { Bike = second.BikeOf().Next(value: "other") };
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveAsync(stale, Ct));

        Assert.Null(await Store.FindCaseAsync(second.Id, Ct));
        Assert.Empty(await Store.UnsaidAsync(second.Place, 10, Ct));
        Assert.Equal("stock", (await Store.FindBikeAsync(first.Bike, Ct))!.Facts["arm"].Value);
    }

    [Fact]
    public async Task Save_VersionAheadOfWhatIsStored_IsStale()
    {
        var c = Sample.Opened().Next();
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveAsync((c with { Version = 2 }).Saying(), Ct));
        Assert.Null(await Store.FindCaseAsync(c.Id, Ct));
    }

    [Fact]
    public async Task Save_VerySameTurnAgain_IsTakenForLanded()
    {
        var c = Sample.Opened().Next(phase: CasePhase.Solved);
        var turn = c.Saying("one", "two") with { Bike = c.BikeOf().Next(), Outcome = c.OutcomeOf() };
        await Store.SaveAsync(turn, Ct);
        await Store.MarkSaidAsync(turn.Say[0].Id, Ct);

        await Store.SaveAsync(turn, Ct);
        // The same turn taken once more a little later differs in its times.
        var later = c with { LastTurnAt = c.LastTurnAt.AddSeconds(5), ClosedAt = c.ClosedAt!.Value.AddSeconds(5) };
        await Store.SaveAsync(turn with { Case = later }, Ct);

        Same.Assert(c, await Store.FindCaseAsync(c.Id, Ct));
        Assert.Equal(1, (await Store.FindBikeAsync(c.Bike, Ct))!.Version);
        Assert.Single(await Store.OutcomesAsync(10, Ct));
        Assert.Equal(["two"], (await Store.UnsaidAsync(c.Place, 10, Ct)).Words());
    }

    [Fact]
    public async Task Save_TurnThatDoesNotHangTogether_IsRefused()
    {
        var c = Sample.Opened().Next();
        var other = Sample.Opened("other", "pip").Next();

        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.SaveAsync((c with { Version = 0 }).Saying(), Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.SaveAsync(c.Saying() with { Bike = other.BikeOf().Next() }, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.SaveAsync(c.Saying() with { Outcome = other.OutcomeOf() }, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.SaveAsync(c.Saying() with { Say = other.Saying("x").Say }, Ct));
        Assert.Null(await Store.FindCaseAsync(c.Id, Ct));
    }

    [Fact]
    public async Task Unsaid_SeveralTurnsAndPlaces_IsInTheOrderOfDecisionForThatPlace()
    {
        var here = Sample.Opened("here").Next();
        var there = Sample.Opened("there", "pip", "shed-corner-2").Next();
        await Store.SaveAsync(here.Saying("1", "2"), Ct);
        await Store.SaveAsync(there.Saying("a"), Ct);
        await ReopenAsync();
        await Store.SaveAsync(here.Next().Saying([.. Enumerable.Range(3, 10).Select(n => $"{n}")]), Ct);

        Assert.Equal(Enumerable.Range(1, 12).Select(n => $"{n}"), (await Store.UnsaidAsync("shed-corner", 100, Ct)).Words());
        Assert.Equal(["1", "2", "3"], (await Store.UnsaidAsync("shed-corner", 3, Ct)).Words());
        Assert.Equal(["a"], (await Store.UnsaidAsync("shed-corner-2", 100, Ct)).Words());
    }

    [Fact]
    public async Task Unsaid_AnswerToAnEvent_KnowsWhichOne()
    {
        var turn = Sample.Opened().Next().Saying("one", "two");
        await Store.SaveAsync(turn with { Say = [turn.Say[0] with { Answers = "event-77" }, turn.Say[1]] }, Ct);
        await ReopenAsync();

        Assert.Equal(["event-77", ""], (await Store.UnsaidAsync("shed-corner", 10, Ct)).Select(m => m.Answers));
    }

    [Fact]
    public async Task MarkSaid_TwiceOrUnknown_IsDoneOnceWithoutComplaint()
    {
        var turn = Sample.Opened().Next().Saying("one", "two");
        await Store.SaveAsync(turn, Ct);

        await Store.MarkSaidAsync(turn.Say[0].Id, Ct);
        await Store.MarkSaidAsync(turn.Say[0].Id, Ct);
        await Store.MarkSaidAsync("never-was", Ct);
        await ReopenAsync();

        Assert.Equal(["two"], (await Store.UnsaidAsync("shed-corner", 10, Ct)).Words());
    }

    [Fact]
    public async Task Save_EightMembersAtOnce_LosesNothing()
    {
        const int Turns = 40;
        await Task.WhenAll(Enumerable.Range(0, 8).Select(member => Task.Run(async () =>
        {
            var c = Sample.Opened($"case-{member}", $"member-{member}");
            var bike = c.BikeOf();
            for (var turn = 0; turn < Turns; turn++)
            {
                (c, bike) = (c.Next($"{turn}"), bike.Next(value: $"{turn}"));
                await Store.SaveAsync(c.Saying($"{member}/{turn}") with { Bike = bike }, Ct);
                Assert.Equal(c.Version, (await Store.FindCaseAsync(c.Id, Ct))!.Version);
            }
        })));
        await ReopenAsync();

        foreach (var member in Enumerable.Range(0, 8))
        {
            var c = await Store.FindCaseAsync(new CaseId($"case-{member}"), Ct);
            Assert.Equal(Enumerable.Range(0, Turns).Select(t => $"{t}"), c!.Entries.Select(e => e.Value));
            Assert.Equal(Turns, (await Store.FindBikeAsync(c.Bike, Ct))!.Version);
        }

        Assert.Equal(100, (await Store.UnsaidAsync("shed-corner", 100, Ct)).Length);
    }

    [Fact]
    public async Task Save_OneCaseFromEightSidesAtOnce_TakesOneAndCallsTheOthersStale()
    {
        var c = Sample.Opened().Next();
        await Store.SaveAsync(c.Saying(), Ct);

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => Task.Run(async () =>
        {
            try
            {
                await Store.SaveAsync(c.Next($"side-{n}").Saying($"side-{n}"), Ct);
                return n;
            }
            catch (StaleSaveException)
            {
                return -1;
            }
        })));

        var winner = Assert.Single(results, r => r >= 0);
        Assert.Equal($"side-{winner}", (await Store.FindCaseAsync(c.Id, Ct))!.Entries[^1].Value);
        Assert.Equal([$"side-{winner}"], (await Store.UnsaidAsync(c.Place, 10, Ct)).Words());
    }
}
