using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises about a bike that changes outside a case.</summary>
public abstract class BikeContract : SaveContract
{
    private static BikeProfile Fresh => BikeProfile.New(new BikeId("wren-bike"), Sample.Wren);

    [Fact]
    public async Task SaveBike_NewAndThenChanged_IsFoundAfterReopening()
    {
        await Store.SaveBikeAsync(Fresh.Ridden(), Ct);
        var next = Fresh.Ridden().Ridden(5);
        await Store.SaveBikeAsync(next, Ct);

        await ReopenAsync();

        Same.Assert(next, await Store.FindBikeAsync(next.Id, Ct));
        Same.Assert(next, Assert.Single(await Store.BikesOfAsync(Sample.Wren, Ct)));
    }

    [Fact]
    public async Task SaveBike_ReadBeforeSomebodyElseSaved_IsStaleAndChangesNothing()
    {
        await Store.SaveBikeAsync(Fresh.Ridden(), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveBikeAsync(Fresh.Ridden(99), Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveBikeAsync(Fresh.Ridden() with { Version = 3 }, Ct));

        Same.Assert(Fresh.Ridden(), await Store.FindBikeAsync(Fresh.Id, Ct));
    }

    [Fact]
    public async Task SaveBike_WhileATurnHasReadIt_TheTurnIsStale()
    {
        var c = Sample.Opened().Next();
        await Store.SaveBikeAsync(Fresh.Ridden(), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveAsync(c.Saying("lost") with { Bike = Fresh.Next() }, Ct));

        Assert.Null(await Store.FindCaseAsync(c.Id, Ct));
    }

    [Fact]
    public async Task SaveBike_WithoutAVersion_IsRefused() =>
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Store.SaveBikeAsync(Fresh, Ct));
}
