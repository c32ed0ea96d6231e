using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Riding;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 2 wrote, kept here as it was: two bikes of two invented members, a club and a room.</summary>
public sealed class LayoutTwoTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private static readonly BikeId Heron = new("12/1-bike");
    private readonly ScratchDirectory scratch = new();

    public LayoutTwoTest() => Packed.File(2, scratch);

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutTwo_HasAllThatWasInItAndNothingRidden()
    {
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.StartsWith(
            "sound; about 1, arrivals 0, audit 0, bikes 2, cases 2, clubs 1, editions 0, layers 0, learning 0, outbox 3, outcomes 1, proposals 0, riders 0, rooms 1, teaching 0, tips 0, unheard 0; schema 7;", store.Integrity.ToString(), StringComparison.Ordinal);
        var heron = BikeProfile.New(Heron, new MemberId("12/1")).Next() with
        {
            Name = "Heron",
            Work = [new WorkDone("set-the-arm", "set the arm back to neutral", new CaseId("case-1"), Sample.Noon)],
        };
        Same.Assert(heron, await store.FindBikeAsync(Heron, Ct));
        Same.Assert(BikeProfile.New(new BikeId("pip-bike"), new MemberId("pip")).Next("pads-age", "new"), Assert.Single(await store.BikesOfAsync(new MemberId("pip"), Ct)));
        Same.Assert(Sample.ClubOf("12"), await store.FindClubAsync(new ClubId("12"), Ct));
        Assert.Equal("shed-corner", Assert.Single(await store.OpenRoomsAsync(Ct)).Place);
    }

    [Fact]
    public async Task Open_FileOfLayoutTwo_IsRiddenOn()
    {
        await using var store = await OpenAsync();
        var bike = (await store.FindBikeAsync(Heron, Ct))!;
        var ridden = bike.Riding.Log(new RiddenDay(Sample.Today, 10, null, Weather.Wet), Sample.Today, null, Sample.Noon).Must;

        await store.SaveBikeAsync(bike with { Riding = ridden, Version = 2 }, Ct);

        Same.Assert(ridden, (await store.FindBikeAsync(Heron, Ct))!.Riding);
    }

    [Fact]
    public async Task Open_FileOfLayoutTwo_LaysBikesOutAsNewOnes()
    {
        await (await OpenAsync()).DisposeAsync();

        using var db = Lite.OpenToRead(scratch.Data);
        foreach (var document in db.GetCollection(BikeDocument.Collection).FindAll())
        {
            var fresh = BikeDocument.ToBson(BikeDocument.FromBson(document));
            Assert.Equal(fresh.Keys.Order(), document.Keys.Order());
            Assert.Equal((fresh["riding"].ToString(), fresh["done"].ToString()), (document["riding"].ToString(), document["done"].ToString()));
        }
    }

    [Fact]
    public async Task Open_FileOfLayoutTwo_LeavesACopyThatCanBeBroughtUpToo()
    {
        await (await OpenAsync()).DisposeAsync();
        using (var before = Lite.OpenToRead(scratch.File("shed-before-7.db")))
        {
            Assert.Equal(2, About.Find(before));
            Assert.DoesNotContain("riding", before.GetCollection(BikeDocument.Collection).FindAll().First().Keys);
        }

        File.Move(scratch.File("shed-before-7.db"), scratch.Data, overwrite: true);
        await using var store = await OpenAsync();
        Assert.Equal("Heron", (await store.FindBikeAsync(Heron, Ct))!.Name);
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
