using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Bikes;

/// <summary>Facts on the sheet: what follows from them, how they age, and who may replace them.</summary>
public sealed class SheetTests
{
    /// <summary>47 x 38 mm is 65.93 cc (V = pi/4 B^2 S). 24:1 is 41.7 ml a litre and 5.33 US fl oz a US gallon (arithmetic; a gallon is 128 fl oz).</summary>
    [Fact]
    public void Figures_EngineAndOil_AreThoseOfTheTables()
    {
        var bike = Told(("engine-size", "47x38"), ("oil-ratio", "24:1"));
        Assert.Equal(["the engine sweeps 65.9 cc", "24:1 is 42 ml of oil to a litre of fuel, 208 ml to 5 litres"], SheetFigures.Of(bike, Units.Metric).AsEnumerable());
        Assert.Contains("5.33 US fl oz of oil to a US gallon", SheetFigures.Of(bike, Units.Imperial)[1], StringComparison.Ordinal);
    }

    /// <summary>
    /// Kinematics, as owners' gear tables have it: 82/20 and 44/10 make 18.04; a wheel of 2.070 m (50-559 unloaded, ISO 5775-1 sizes) goes 1000 / 18.04 x 2.070 x 60 m
    /// in an hour at 1000 turns a minute: 6.88 km/h, 4.28 mph.
    /// </summary>
    [Fact]
    public void Figures_Gears_AreThoseOfTheTables()
    {
        var bike = Told(("primary-teeth", "82/20"), ("small-sprocket", "10"), ("rear-sprocket", "44"), ("wheel", "50-559"));
        Assert.Contains("turns 18.04 times", SheetFigures.Of(bike, Units.Metric)[0], StringComparison.Ordinal);
        Assert.Contains("about 6.9 km/h for each 1000 turns of the engine a minute, 34 km/h at 5000", SheetFigures.Of(bike, Units.Metric)[1], StringComparison.Ordinal);
        Assert.Contains("about 4.3 mph", SheetFigures.Of(bike, Units.Imperial)[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wheel", "26in")]
    [InlineData("engine-size", "66cc")]
    [InlineData("rear-sprocket", "44")]
    [InlineData("rear-sprocket", "many")]
    public void Figures_WhatIsNotKnownWellEnough_LeadsToNothing(string field, string value) => Assert.Empty(SheetFigures.Of(Told((field, value)), Units.Metric));

    [Theory]
    [InlineData(182, 0, false)]
    [InlineData(183, 0, true)]
    [InlineData(40, 28, false)]
    [InlineData(40, 29, true)]
    public void IsStale_OfABarLength_IsByTheCalendarOrByRiding(int days, int ridden, bool stale)
    {
        var bike = Told(("bar-length", "18.2"));
        for (var i = 1; i <= ridden; i++) bike = bike with { Riding = bike.Riding.Log(new RiddenDay(Bench.Today.PlusDays(i), 5, null, Weather.Dry), Bench.Today.PlusDays(days), null, Bench.Now).Must };
        Assert.Equal(stale, FactAge.IsStale(Field("bar-length"), bike.Facts["bar-length"], bike, Bench.Today.PlusDays(days), DateTimeZone.Utc));
    }

    [Fact]
    public void IsStale_OfAnEngineSize_IsNever() =>
        Assert.False(FactAge.IsStale(Field("engine-size"), Told(("engine-size", "47x38")).Facts["engine-size"], Bench.Bike, Bench.Today.PlusYears(30), DateTimeZone.Utc));

    [Theory]
    [InlineData(0, "today")]
    [InlineData(1, "yesterday")]
    [InlineData(13, "13 days ago")]
    [InlineData(14, "2 weeks ago")]
    [InlineData(60, "2 months ago")]
    [InlineData(245, "8 months ago")]
    [InlineData(400, "1 year ago")]
    [InlineData(800, "2 years ago")]
    public void Ago_SomeDays_IsTheRoughWord(int days, string says) => Assert.Equal(says, FactAge.Ago(days));

    [Fact]
    public void Look_StaleFact_SaysSoAndWhatToDo()
    {
        var text = Talk.Text(BikeLook.Of(Told(("bar-length", "18.2"), ("engine-size", "66cc")), Bench.Knowledge, Bench.Speaker, Bench.Now.AddDays(245)));
        Assert.Contains("bar length: 18.2 mm (told on 2026-05-01, 8 months ago: measure again)", text, StringComparison.Ordinal);
        Assert.Contains("engine size: 66 cc (told on 2026-05-01)", text, StringComparison.Ordinal);
    }

    /// <summary>What stands there, what is overheard, and what stands there then.</summary>
    [Theory]
    [InlineData("", "", "18.2", "18.2")]
    [InlineData("18.4", Telling.Told, "18.2", "18.4")]
    [InlineData("18.4", Telling.Heard, "18.2", "18.2")]
    [InlineData("18.4", Telling.Done, "18.2", "18.2")]
    public void News_Overheard_NeverReplacesWhatTheRiderTold(string stands, string how, string heard, string then)
    {
        var bike = stands.Length == 0 ? Bench.Bike : Telling.Tell(Bench.Bike, [new FactTold("bar-length", stands)], Bench.Now, how);
        var news = Telling.News(bike, [new FactTold("bar-length", heard)], f => Field(f).Kind, (_, _) => false);
        Assert.Equal(then, Telling.Tell(bike, news, Bench.Now, Telling.Heard).Facts["bar-length"].Value);
    }

    [Fact]
    public void News_OverheardOfWhatIsStale_ReplacesWhatWasTold() =>
        Assert.Single(Telling.News(Told(("bar-length", "18.4")), [new FactTold("bar-length", "18.2")], f => Field(f).Kind, (_, _) => true));

    [Fact]
    public void News_WhatItGoesBy_NeverReplacesAMeasuredSize()
    {
        var bike = Telling.Tell(Bench.Bike, [new FactTold("wheel", "54-559"), new FactTold("engine-size", "47x38")], Bench.Now, Telling.Heard);
        Assert.Empty(Telling.News(bike, [new FactTold("wheel", "26in"), new FactTold("engine-size", "66cc")], f => Field(f).Kind, (_, _) => true));
    }

    [Fact]
    public void Make_FactsTold_SaysWhatFollowsAndWhatStoodThere()
    {
        var made = Entering.Make(Told(("engine-size", "66cc")), new TellEntry([new FactTold("engine-size", "47x38")]), Bench.Knowledge, Bench.Speaker, Bench.Now).Must;
        Assert.Equal("Noted: engine size bore x stroke 47 x 38 mm (66 cc before)", made.Title);
        Assert.Equal(["the engine sweeps 65.9 cc"], made.Follows.AsEnumerable());
        Assert.Equal(("47x38", "told"), (made.Bike.Facts["engine-size"].Value, made.Bike.Facts["engine-size"].How));
    }

    [Fact]
    public void Make_AFactNotKnownAnyMore_IsTakenOut() =>
        Assert.Empty(Entering.Make(Told(("engine-size", "66cc")), new TellEntry([new FactTold("engine-size", null)]), Bench.Knowledge, Bench.Speaker, Bench.Now).Must.Bike.Facts);

    /// <summary>A repair that is renamed in the rules would silently renew nothing.</summary>
    [Fact]
    public void Renewals_OfTheShippedRules_NameRepairsAndFieldsThatExist()
    {
        var renewing = Bench.Knowledge.Repairs.Keys.Where(r => !Renewals.Of(r, Bench.Today).IsEmpty).ToList();
        Assert.Equal(["fit-return-spring", "new-bar-and-ball", "new-key", "new-pads", "new-primary-gears", "new-shaft-bearing", "new-slotted-part"], renewing.Order(StringComparer.Ordinal));
        Assert.All(renewing.SelectMany(r => Renewals.Of(r, Bench.Today)), f => Assert.True(f.Value is null || Field(f.Field).Kind.Read(f.Value, new(Units.Metric, Bench.Today)).Must == f.Value));
    }

    private static SheetField Field(string id) => BikeSheet.Find(Bench.Knowledge, id)!;

    private static BikeProfile Told(params (string Field, string Value)[] facts) => Telling.Tell(Bench.Bike, facts.Select(f => new FactTold(f.Field, f.Value)), Bench.Now, Telling.Told);
}
