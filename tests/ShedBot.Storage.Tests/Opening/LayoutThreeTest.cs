using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 3 wrote, kept here as it was: a bike that was ridden, a case, a club and a room.</summary>
public sealed class LayoutThreeTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private static readonly MemberId One = new ClubId("12").Member("1");
    private readonly ScratchDirectory scratch = new();

    public LayoutThreeTest() => Packed.File(3, scratch);

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutThree_HasAllThatWasInItAndNobodyToRemind()
    {
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.StartsWith(
            "sound; about 1, arrivals 0, audit 0, bikes 1, cases 1, clubs 1, editions 0, layers 0, learning 0, outbox 2, outcomes 0, proposals 0, riders 0, rooms 1, teaching 0, tips 0, unheard 0; schema 7;", store.Integrity.ToString(), StringComparison.Ordinal);
        Same.Assert(BikeProfile.New(new BikeId("12/1/bike"), One).Ridden() with { Name = "Heron" }, await store.FindBikeAsync(new BikeId("12/1/bike"), Ct));
        Assert.Equal(["Pull the lever.", "What do you feel?"], (await store.UnsaidAsync("place-1", 10, Ct)).Words());
        Assert.Null(await store.FindRiderAsync(One, Ct));
    }

    [Fact]
    public async Task Open_FileOfLayoutThree_RemindsFromNowOn()
    {
        await using (var store = await OpenAsync())
        {
            await store.SaveRiderAsync(Sample.RiderOf("12/1", 5), [], [], Ct);
        }

        await using var again = await OpenAsync();
        Same.Assert(Sample.RiderOf("12/1", 5), Assert.Single(await again.DueRidersAsync(Sample.Noon.AddMinutes(5), 10, Ct)));
    }

    [Fact]
    public async Task Open_FileOfLayoutThree_LeavesACopyThatCanBeBroughtUpToo()
    {
        await (await OpenAsync()).DisposeAsync();

        using (var before = Lite.OpenToRead(scratch.File("shed-before-7.db")))
        {
            Assert.Equal(3, About.Find(before));
        }

        File.Move(scratch.File("shed-before-7.db"), scratch.Data, overwrite: true);
        await using var store = await OpenAsync();
        Assert.Equal("Heron", (await store.FindBikeAsync(new BikeId("12/1/bike"), Ct))!.Name);
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
