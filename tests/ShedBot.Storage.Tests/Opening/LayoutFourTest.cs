using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 4 wrote, kept here as it was: a bike, its rider and a reminder that waits.</summary>
public sealed class LayoutFourTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private static readonly MemberId One = new ClubId("12").Member("1");
    private readonly ScratchDirectory scratch = new();

    public LayoutFourTest() => Packed.File(4, scratch);

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutFour_HasAllThatWasInItAndNoSettingsOfTheirOwn()
    {
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.Contains("schema 7;", store.Integrity.ToString(), StringComparison.Ordinal);
        Same.Assert(Sample.RiderOf("12/1", 5), await store.FindRiderAsync(One, Ct));
        Assert.Equal(["grease"], (await store.UnsaidAsync("nudge/12/1", 10, Ct)).Words());
        Same.Assert(BikeProfile.New(BikeId.Of(One), One) with { Name = "Heron", Version = 1 }, Assert.Single(await store.BikesOfAsync(One, Ct)));
    }

    [Fact]
    public async Task Open_FileOfLayoutFour_TakesSettingsFromNowOn()
    {
        var own = Sample.RiderOf("12/1", 5) with { Units = Units.Imperial, Bike = BikeId.Of(One), Version = 2 };
        await using (var store = await OpenAsync())
        {
            await store.SaveRiderAsync(own, [], [], Ct);
        }

        await using var again = await OpenAsync();
        Same.Assert(own, await again.FindRiderAsync(One, Ct));
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
