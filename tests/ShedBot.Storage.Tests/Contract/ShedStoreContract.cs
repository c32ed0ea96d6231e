using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises. A second store derives from this and from the other contracts, and gives itself.</summary>
public abstract class ShedStoreContract : IAsyncLifetime
{
    protected static readonly CancellationToken Ct = CancellationToken.None;

    protected IShedStore Store { get; private set; } = null!;

    public async Task InitializeAsync() => Store = await OpenAsync();

    public abstract Task DisposeAsync();

    protected abstract Task<IShedStore> OpenAsync();

    /// <summary>Closes the store and opens it again.</summary>
    protected async Task ReopenAsync()
    {
        await Store.DisposeAsync();
        Store = await OpenAsync();
    }

    [Fact]
    public async Task FindCase_NeverSaved_IsNull() => Assert.Null(await Store.FindCaseAsync(new CaseId("nobody's"), Ct));

    [Fact]
    public async Task FindBike_NeverSaved_IsNull() => Assert.Null(await Store.FindBikeAsync(new BikeId("nobody's"), Ct));

    [Fact]
    public async Task Save_WholeTurn_AllOfItIsFoundAfterReopening()
    {
        var c = Sample.Opened().Next(phase: CasePhase.Solved);
        var bike = c.BikeOf().Next();
        var outcome = c.OutcomeOf();
        await Store.SaveAsync(c.Saying("It holds.") with { Bike = bike, Outcome = outcome }, Ct);

        await ReopenAsync();

        Same.Assert(c, await Store.FindCaseAsync(c.Id, Ct));
        Same.Assert(bike, await Store.FindBikeAsync(bike.Id, Ct));
        Same.Assert(outcome, Assert.Single(await Store.OutcomesAsync(10, Ct)));
        Assert.Equal(["It holds."], (await Store.UnsaidAsync(c.Place, 10, Ct)).Words());
    }

    [Fact]
    public async Task FindOpenCase_ClosedAndOpenOnes_IsTheOpenOneLastTouchedInThatPlace()
    {
        var old = Sample.Opened("old").Next();
        var newer = Sample.Opened("newer").Next().Next();
        var closed = Sample.Opened("closed").Next().Next().Next(phase: CasePhase.Left);
        var elsewhere = Sample.Opened("elsewhere", place: "kitchen").Next();
        foreach (var c in new[] { old, newer, closed, elsewhere })
        {
            await SaveUpToAsync(c);
        }

        Assert.Equal(newer.Id, (await Store.FindOpenCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id);
        Assert.Equal(elsewhere.Id, (await Store.FindOpenCaseAsync(Sample.Wren, "kitchen", Ct))?.Id);
        Assert.Null(await Store.FindOpenCaseAsync(Sample.Wren, "attic", Ct));
        Assert.Null(await Store.FindOpenCaseAsync(new MemberId("pip"), "shed-corner", Ct));
    }

    [Fact]
    public async Task FindOpenCase_OnceItIsClosed_IsNoLongerFound()
    {
        var open = Sample.Opened().Next();
        await Store.SaveAsync(open.Saying(), Ct);
        await Store.SaveAsync(open.Next(phase: CasePhase.Left).Saying(), Ct);

        Assert.Null(await Store.FindOpenCaseAsync(Sample.Wren, open.Place, Ct));
    }

    [Fact]
    public async Task FindLastCase_TwoPlaces_IsTheOneLastTouchedThereClosedOrNot()
    {
        var older = Sample.Opened("older").Next().Next();
        var solved = Sample.Opened("solved").Next().Next().Next(phase: CasePhase.Solved);
        var newerElsewhere = Turned(Sample.Opened("elsewhere", place: "shed-corner-2"), 5);
        var somebodyElses = Turned(Sample.Opened("somebody-elses", "wren2"), 6);
        foreach (var c in new[] { older, solved, newerElsewhere, somebodyElses })
        {
            await SaveUpToAsync(c);
        }

        Assert.Equal(solved.Id, (await Store.FindLastCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id);
        Assert.Equal(newerElsewhere.Id, (await Store.FindLastCaseAsync(Sample.Wren, "shed-corner-2", Ct))?.Id);
        Assert.Null(await Store.FindLastCaseAsync(Sample.Wren, "shed", Ct));
        Assert.Null(await Store.FindLastCaseAsync(new MemberId("wre"), "shed-corner", Ct));

        var touched = older.Next().Next() with { Version = older.Version + 1 };
        await Store.SaveAsync(touched.Saying(), Ct);
        Assert.Equal(older.Id, (await Store.FindLastCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id);
    }

    [Fact]
    public async Task FindLastCase_TouchedInTheSameMoment_IsTheOneThatFindOpenCaseFinds()
    {
        foreach (var id in new[] { "b", "c", "a" })
        {
            await Store.SaveAsync(Sample.Opened(id).Next().Saying(), Ct);
        }

        Assert.Equal("c", (await Store.FindLastCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id.Value);
        Assert.Equal("c", (await Store.FindOpenCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id.Value);
    }

    [Fact]
    public async Task CasesOf_MoreThanTheLimit_AreTheLastTouchedFirst()
    {
        foreach (var n in Enumerable.Range(1, 5))
        {
            await SaveUpToAsync(Turned(Sample.Opened($"case-{n}"), n));
        }

        await SaveUpToAsync(Turned(Sample.Opened("of-another", member: "wren2"), 9));

        var found = await Store.CasesOfAsync(Sample.Wren, 3, Ct);

        Assert.Equal(["case-5", "case-4", "case-3"], found.Select(c => c.Id.Value));
    }

    [Fact]
    public async Task BikesOf_TwoMembers_AreTheOwnersOnly()
    {
        foreach (var (member, bike) in new[] { ("wren", "red"), ("wren", "blue"), ("pip", "green") })
        {
            var c = Sample.Opened($"case-{bike}", member, bike: bike).Next();
            await Store.SaveAsync(c.Saying() with { Bike = c.BikeOf().Next() }, Ct);
        }

        Assert.Equal(["blue", "red"], (await Store.BikesOfAsync(Sample.Wren, Ct)).Select(b => b.Id.Value));
    }

    [Fact]
    public async Task Outcomes_SavedInAnyOrder_AreOldestFirst()
    {
        foreach (var n in new[] { 3, 1, 2 })
        {
            var c = Turned(Sample.Opened($"case-{n}"), n);
            await SaveUpToAsync(c);
            var closed = c.Next(phase: CasePhase.Solved);
            await Store.SaveAsync(closed.Saying() with { Outcome = closed.OutcomeOf() }, Ct);
        }

        Assert.Equal(["case-1", "case-2"], (await Store.OutcomesAsync(2, Ct)).Select(o => o.Case.Value));
    }

    [Theory]
    [InlineData("Wren", "wren")]
    [InlineData("Straße", "Strasse")]
    [InlineData("ı", "i")]
    public async Task Save_IdsThatDifferInCaseOrSpellingOnly_AreTwoCases(string one, string other)
    {
        var (a, b) = (Sample.Opened(one, one).Next("a"), Sample.Opened(other, other).Next("b"));
        await Store.SaveAsync(a.Saying(), Ct);
        await Store.SaveAsync(b.Saying(), Ct);

        Same.Assert(a, await Store.FindCaseAsync(a.Id, Ct));
        Same.Assert(b, await Store.FindCaseAsync(b.Id, Ct));
        Assert.Single(await Store.CasesOfAsync(a.Member, 10, Ct));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(101)]
    public async Task CasesOfAndUnsaid_LimitOutOfRange_Throw(int limit)
    {
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Store.CasesOfAsync(Sample.Wren, limit, Ct));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Store.UnsaidAsync("shed-corner", limit, Ct));
    }

    protected static Case Turned(Case c, int turns) => Enumerable.Range(0, turns).Aggregate(c, (at, _) => at.Next());

    /// <summary>Saves a case that was built in memory as if each of its turns had been saved.</summary>
    protected async Task SaveUpToAsync(Case c)
    {
        for (var version = 1; version <= c.Version; version++)
        {
            await Store.SaveAsync((c with { Version = version, Turn = version }).Saying(), Ct);
        }
    }
}
