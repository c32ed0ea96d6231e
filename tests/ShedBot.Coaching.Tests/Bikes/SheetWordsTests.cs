using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Tests.Logbook;

namespace ShedBot.Coaching.Tests.Bikes;

public sealed class SheetWordsTests
{
    [Theory]
    [InlineData("bike bar length 18.2 mm", "bar-length=18.2")]
    [InlineData("Bike bar: 18,2mm.", "bar-length=18.2")]
    [InlineData("bike bar is 3/4 in", "bar-length=19.05")]
    [InlineData("bike tyre 26 x 2.125", "wheel=54-559")]
    [InlineData("bike wheel 26\"", "wheel=26in")]
    [InlineData("bike engine 47 x 38 mm", "engine-size=47x38")]
    [InlineData("bike engine size is 66cc", "engine-size=66cc")]
    [InlineData("bike rear sprocket 44", "rear-sprocket=44")]
    [InlineData("bike oil 1:24", "oil-ratio=24:1")]
    [InlineData("bike return spring none", "return-spring=none")]
    [InlineData("bike pads 3 months ago", "pads-date=2026-02-01")]
    [InlineData("bike carb: brass slide", "carburettor=brass slide")]
    [InlineData("bike bar length unknown", "bar-length=")]
    [InlineData("bike 66cc", "engine-size=66cc")]
    [InlineData("the bar is 18.2 mm", "bar-length=18.2")]
    [InlineData("it's a 66cc with 26 inch wheels", "engine-size=66cc wheel=26in")]
    public void Read_Facts_AreTold(string line, string told) =>
        Assert.Equal(told, string.Join(' ', Assert.IsType<TellEntry>(Bench.Read(line)!.Value.Must).Facts.Select(f => $"{f.Field}={f.Value}").Order(StringComparer.Ordinal)));

    [Theory]
    [InlineData("bike wheel wobbles")]
    [InlineData("bike carburettor leaks fuel")]
    [InlineData("bike clutch pads smell burnt")]
    [InlineData("bike chain tensioner fell into the spokes")]
    [InlineData("bike return spring broke")]
    [InlineData("bike pulls when I hold the lever in")]
    [InlineData("bike new build, clutch drags when hot")]
    [InlineData("bike engine size?")]
    [InlineData("clutch slips on my 66cc")]
    [InlineData("the bar is 18.2 mm and the clutch drags")]
    public void Read_WhatCanBeATrouble_IsLeftToTheCoach(string line) => Assert.Null(Bench.Read(line));

    [Fact]
    public void Read_FactsWhileAQuestionIsOpen_AreLeftToTheCoach() => Assert.Null(Bench.Read("the bar is 18.2 mm", loose: false));

    [Theory]
    [InlineData("bike bar length 182 mm", "Bar length: I cannot read")]
    [InlineData("bike bar", "How long is the bucking bar")]
    [InlineData("bike rear sprocket 440", "from 20 to 80")]
    [InlineData("bike carb brass 17", "bike carb: brass 17")]
    [InlineData("bike new", "Which bike?")]
    public void Read_WhatCanBeNothingElse_SaysWhatToWrite(string line, string says) => Assert.Contains(says, Bench.Read(line)!.Value.Refused!.Say, StringComparison.Ordinal);

    [Fact]
    public void Read_Bikes_IsWhatIsWanted()
    {
        Assert.Equal(new ShowBike(), Bench.Read("bike")!.Value.Must);
        Assert.Equal(new ShowBikes(), Bench.Read("bikes")!.Value.Must);
        Assert.Equal(new NewBike("Red Cruiser"), Bench.Read("bike new Red Cruiser")!.Value.Must);
        Assert.Equal(new UseBike("red"), Bench.Read("bike use red")!.Value.Must);
        Assert.Equal(new NameBike("old one"), Bench.Read("bike name old one")!.Value.Must);
        Assert.Equal(new RemoveBike("red", Sure: false), Bench.Read("bike remove red")!.Value.Must);
    }

    [Fact]
    public void Tell_AFieldThatIsNotKept_NamesThoseThatAre() =>
        Assert.Contains("bar length", SheetWords.Tell("colour", "red", Bench.Knowledge, Bench.Speaker, Bench.Now).Refused!.Say, StringComparison.Ordinal);

    [Fact]
    public void Tell_EveryField_IsKnownByItsIdAndItsName() => Assert.All(
        BikeSheet.Of(Bench.Knowledge),
        f => Assert.Equal(f.Id, Assert.Single(Assert.IsType<TellEntry>(SheetWords.Tell(f.Called, "", Bench.Knowledge, Bench.Speaker, Bench.Now).Must).Facts).Field));

    /// <summary>A name of two fields would fill the one that stands first.</summary>
    [Fact]
    public void Names_OfAllFields_AreUnique()
    {
        var names = BikeSheet.Of(Bench.Knowledge).SelectMany(f => f.Names.Append(f.Called)).ToList();
        Assert.Equal(names.Order(StringComparer.Ordinal), names.Distinct().Order(StringComparer.Ordinal));
    }
}
