using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 5 wrote, kept here as it was: closed cases of two clubs and of none, and one that was solved and came back.</summary>
public sealed class LayoutFiveTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public LayoutFiveTest() => Packed.File(5, scratch);

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutFive_HasAllThatWasInItAndNothingTaught()
    {
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.StartsWith(
            "sound; about 1, arrivals 0, audit 0, bikes 1, cases 5, clubs 1, editions 0, layers 0, learning 0, outbox 3, outcomes 5, proposals 0, riders 1, rooms 0, "
            + "teaching 0, tips 0, unheard 0; schema 7;",
            store.Integrity.ToString(), StringComparison.Ordinal);
        Same.Assert(Sample.RiderOf("12/1", 5), await store.FindRiderAsync(new MemberId("12/1"), Ct));
        Assert.Equal(["It holds."], (await store.UnsaidAsync("place-1", 10, Ct)).Words());
    }

    [Fact]
    public async Task Open_FileOfLayoutFive_FindsItsClosedCasesByClub()
    {
        await using var store = await OpenAsync();

        Assert.Equal(["stopped", "solved"], await ClosedAsync(store, "12"));
        Assert.Equal(["other"], await ClosedAsync(store, "13"));
        Assert.Equal(["alone"], await ClosedAsync(store, "practice"));
        var solved = (await store.ClosedCasesAsync(new ClubId("12"), 10, Ct))[1];
        Assert.Equal(("set-the-arm", 1), (solved.Outcome.Repair, solved.Bike!.Version));
    }

    [Fact]
    public async Task Open_FileOfLayoutFive_KeysAreThoseThatATurnWrites()
    {
        // The step writes the key out by itself: held against the mapping, by saving a turn as this program would.
        await using var store = await OpenAsync();
        foreach (var id in new[] { "stopped", "alone" })
        {
            var c = (await store.FindCaseAsync(new CaseId(id), Ct))!;
            await store.SaveAsync((c with { Version = c.Version + 1 }).Saying(), Ct);
        }

        Assert.Equal(["stopped", "solved"], await ClosedAsync(store, "12"));
        Assert.Equal(["alone"], await ClosedAsync(store, "practice"));
    }

    [Fact]
    public async Task Open_FileOfLayoutFive_TakesTeachingFromNowOn()
    {
        await using (var store = await OpenAsync())
        {
            await store.SaveTeachingAsync(SampleTeaching.Act(SampleTeaching.EditionOf(1)), Ct);
            var turn = (await store.FindCaseAsync(new CaseId("back"), Ct))!.Next("no");
            await store.SaveAsync(turn.Saying() with { Unheard = SampleTeaching.Unheard("brr") }, Ct);
        }

        await using var again = await OpenAsync();
        Assert.Equal(1, await again.NewestEditionAsync(SampleTeaching.Twelve, Ct));
        Assert.Equal("brr", Assert.Single(await again.UnheardAsync(SampleTeaching.Twelve, 10, Ct)).Words);
    }

    private static async Task<string[]> ClosedAsync(LiteShedStore store, string club) =>
        [.. (await store.ClosedCasesAsync(new ClubId(club), 10, Ct)).Select(c => c.Case.Id.Value)];

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
