using NodaTime;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Logbook;

public sealed class EnteringTests
{
    private static readonly RideEntry TwelveWet = new(new RiddenDay(Bench.Today, 12, null, Weather.Wet));

    [Fact]
    public void Make_ARide_IsOnItsDayAndTold()
    {
        var entered = Entering.Make(Bench.Bike, TwelveWet, Bench.Knowledge, Bench.Speaker, Bench.Now).Must;
        Assert.Equal("Noted: 12 km in the wet on 1 May 2026", entered.Title);
        Assert.Equal(12, entered.Bike.Riding.On(Bench.Today)!.Kilometres);
    }

    /// <summary>12 km is 7.456 international miles of 1.609344 km.</summary>
    [Fact]
    public void Make_ARideOfAClubInMiles_IsToldInMiles() => Assert.Equal(
        "Noted: 7.5 miles in the wet on 1 May 2026",
        Entering.Make(Bench.Bike, TwelveWet, Bench.Knowledge, Bench.Speaker with { Units = Units.Imperial }, Bench.Now).Must.Title);

    [Fact]
    public void Make_TwoRidesOfADay_TellsTheWholeDay() => Assert.EndsWith(
        "(that day so far: 24 km in the wet)",
        Entering.Make(Bench.Bike.With(TwelveWet), TwelveWet, Bench.Knowledge, Bench.Speaker, Bench.Now).Must.Title, StringComparison.Ordinal);

    [Fact]
    public void Make_Undo_TakesBackWhateverWasEnteredLast()
    {
        var bike = Bench.Bike.With(TwelveWet).With(new DoneEntry("spokes", Bench.Today), 1).With(new PaceEntry(4, 10, null), 2);
        bike = bike.With(new UndoEntry(), 3);
        Assert.Null(bike.Riding.Pace);
        Assert.Single(bike.Done);
        Assert.Equal("nothing", Entering.Make(bike, new UndoEntry(), Bench.Knowledge, Bench.Speaker, Bench.Now.AddMinutes(4)).Refused!.Code);
        bike = bike.With(new DoneEntry("oil-chain", Bench.Today), 5).With(new UndoEntry(), 6);
        Assert.Equal("spokes", Assert.Single(bike.Done).Task);
        Assert.Equal("nothing", Entering.Make(bike, new UndoEntry(), Bench.Knowledge, Bench.Speaker, Bench.Now.AddMinutes(7)).Refused!.Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-60)]
    public void Make_UndoWhereTheClockStandsStillOrJumpsBack_TakesBackTheLastEntryAllTheSame(int minutes)
    {
        var bike = Bench.Bike.With(new DoneEntry("spokes", Bench.Today)).With(TwelveWet, minutes).With(new UndoEntry(), 2 * minutes);
        Assert.Empty(bike.Riding.Days);
        Assert.Single(bike.Done);
        bike = bike.With(TwelveWet, minutes).With(new DoneEntry("oil-chain", Bench.Today), minutes).With(new UndoEntry(), minutes);
        Assert.Single(bike.Riding.Days);
        Assert.Single(bike.Done);
    }

    [Fact]
    public void Make_UndoOfAnEmptyLogbook_IsRefused() =>
        Assert.Equal("nothing", Entering.Make(Bench.Bike, new UndoEntry(), Bench.Knowledge, Bench.Speaker, Bench.Now).Refused!.Code);

    [Fact]
    public void Make_ARideJustAfterMidnightElsewhere_IsTheRidersOwnDay()
    {
        // 23:30 UTC is half past midnight of the next day in Lisbon in summer (UTC+1 from the last Sunday of March; IANA database).
        var late = new DateTimeOffset(2026, 5, 1, 23, 30, 0, TimeSpan.Zero);
        var rider = Bench.Speaker with { TimeZone = "Europe/Lisbon" };
        var ride = Assert.IsType<RideEntry>(BikeWords.Read("rode", Bench.Knowledge, rider, late, loose: true)!.Value.Must);
        Assert.Equal(new LocalDate(2026, 5, 2), ride.Ride.Day);
        Assert.Null(Entering.Make(Bench.Bike, ride, Bench.Knowledge, rider, late).Refused);
        Assert.Equal("future", Entering.Make(Bench.Bike, ride, Bench.Knowledge, Bench.Speaker, late).Refused!.Code);
    }

    [Theory]
    [InlineData("no-such-task", "task")]
    [InlineData("before-riding", "each-ride")]
    public void Make_ATaskThatIsNotKept_IsRefused(string task, string code) =>
        Assert.Equal(code, Entering.Make(Bench.Bike, new DoneEntry(task, Bench.Today), Bench.Knowledge, Bench.Speaker, Bench.Now).Refused!.Code);

    [Fact]
    public void Make_FittedInTheFuture_IsRefused() =>
        Assert.Equal("future", Entering.Make(Bench.Bike, new FittedEntry(Bench.Today.PlusDays(1)), Bench.Knowledge, Bench.Speaker, Bench.Now).Refused!.Code);
}
