using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Bikes;

/// <summary>More than one bike through the desk.</summary>
public sealed class GarageDeskTests : IDisposable
{
    private static readonly MemberId Robin = Bench.Speaker.Member;
    private static readonly RideEntry Ride = new(new RiddenDay(Bench.Today, 12, null, Weather.Dry));
    private readonly Shelf shelf = new();
    private readonly BikeDesk desk;
    private int events;

    public GarageDeskTests() => desk = new BikeDesk(shelf, shelf, Bench.Coaches);

    [Fact]
    public async Task HandleAsync_WithOneBike_NobodySeesItsName()
    {
        Assert.Equal("Noted: 12 km on 1 May 2026", (await TakeAsync(Ride)).Card.Title);
        await TakeAsync(new NameBike("old faithful"));
        Assert.DoesNotContain("old faithful", (await TakeAsync(Ride)).Card.Title, StringComparison.Ordinal);
        Assert.Equal("old faithful", (await desk.BikeAsync(Robin, default)).Name);
    }

    [Fact]
    public async Task HandleAsync_ANewBike_IsTalkedOfFromThenOnAndSaysSo()
    {
        await TakeAsync(Ride);
        await TakeAsync(new NewBike("blue"));
        Assert.EndsWith("(blue)", (await TakeAsync(Ride)).Card.Title, StringComparison.Ordinal);
        Assert.Equal([12.0, 12.0], shelf.Bikes.Values.Select(b => b.Riding.On(Bench.Today)!.Kilometres!.Value));
        await TakeAsync(new UseBike("the first one"));
        Assert.EndsWith("(the first one)", (await TakeAsync(new ShowPlan(false))).Card.Title, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HandleAsync_ABikeThatIsNamed_IsMeantOnce()
    {
        await TakeAsync(Ride);
        await TakeAsync(new NewBike("blue"));
        Assert.EndsWith("(the first one)", (await TakeAsync(Ride, "first")).Card.Title, StringComparison.Ordinal);
        Assert.EndsWith("(blue)", (await TakeAsync(Ride)).Card.Title, StringComparison.Ordinal);
        Assert.Equal("bike", (await TakeAsync(Ride, "green")).Refused!.Code);
    }

    [Fact]
    public async Task HandleAsync_TheSameNewBikeAgain_IsTakenOnOnce()
    {
        await TakeAsync(Ride);
        for (var i = 0; i < 2; i++) await desk.HandleAsync(Bench.Speaker, "same", new NewBike("blue"), Bench.Now, default);
        Assert.Equal(2, shelf.Bikes.Count);
    }

    [Fact]
    public async Task HandleAsync_AnEntryThatComesAgainAfterTheBikeInUseChanged_IsNotEnteredForTheOther()
    {
        await desk.HandleAsync(Bench.Speaker, "ride", Ride, Bench.Now, default);
        await TakeAsync(new NewBike("blue"));
        Assert.StartsWith("That is noted already", (await desk.HandleAsync(Bench.Speaker, "ride", Ride, Bench.Now, default)).Card.Title, StringComparison.Ordinal);
        Assert.Single(shelf.Bikes.Values, b => b.Riding.LastDay is not null);
    }

    [Fact]
    public async Task HandleAsync_Remove_AsksFirstAndSaysWhatRemains()
    {
        await TakeAsync(Ride);
        await TakeAsync(new NewBike("blue"));
        var asked = (await TakeAsync(new RemoveBike("blue", Sure: false))).Card;
        Assert.Equal(2, shelf.Bikes.Count);
        Assert.Null(GarageCards.Sure(asked.Options[1].Id));

        var removed = await TakeAsync(GarageCards.Sure(asked.Options[0].Id)!);
        Assert.Contains("cases talked through", Talk.Text(removed.Card), StringComparison.Ordinal);
        Assert.Equal("", Assert.Single(shelf.Bikes.Values).Name);
        Assert.Null(shelf.Riders[Robin].Bike);
        Assert.Equal(BikeId.Of(Robin), (await desk.BikeAsync(Robin, default)).Id);
    }

    [Fact]
    public async Task HandleAsync_RemoveWithAnOpenCase_IsRefused()
    {
        await TakeAsync(Ride);
        await shelf.SaveAsync(new TurnSaved(Case.New(new CaseId("c"), Robin, BikeId.Of(Robin), "here", Bench.Now) with { Version = 1 }, null, null, []), default);
        Assert.Equal("open-case", (await TakeAsync(new RemoveBike("first", Sure: true))).Refused!.Code);
        Assert.Single(shelf.Bikes);
    }

    /// <summary>Between the look and the save somebody logs a ride: it is looked again, and what was asked for is done.</summary>
    [Fact]
    public async Task HandleAsync_SomebodySavedTheBikeFirst_IsDecidedAnew()
    {
        await TakeAsync(Ride);
        await TakeAsync(new NewBike("blue"));
        shelf.Meanwhile = () => shelf.Riders[Robin] = shelf.Riders[Robin] with { Version = shelf.Riders[Robin].Version + 1 };
        Assert.Null((await TakeAsync(new RemoveBike("blue", Sure: true))).Refused);
        Assert.Single(shelf.Bikes);
    }

    [Fact]
    public async Task HandleAsync_Copy_IsOfAllBikesEachWithItsName()
    {
        await TakeAsync(Ride);
        await TakeAsync(new NewBike("Bl\u00fce / 2"));
        var names = (await TakeAsync(new TakeCopy())).Files.Select(f => f.Name).ToList();
        Assert.Equal(8, names.Distinct().Count());
        Assert.Contains("bike-rides.csv", names);
        Assert.Contains("ble-2-bike.json", names);
    }

    [Fact]
    public async Task HandleAsync_ABikeIsTakenOnByWhoWantsReminders_TheyAreLookedAtAnew()
    {
        shelf.Riders[Robin] = Rider.New(Robin) with { Consent = Consent.Given, Version = 1 };
        await TakeAsync(new NewBike("blue"));
        Assert.Equal(Bench.Now, shelf.Riders[Robin].NextLook);
    }

    public void Dispose() => desk.Dispose();

    private Task<BikeAnswer> TakeAsync(BikeRequest request, string? bike = null) => desk.HandleAsync(Bench.Speaker, $"e{++events}", request, Bench.Now, default, bike);
}
