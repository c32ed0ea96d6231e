using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Logbook;

namespace ShedBot.Coaching.Tests.Bikes;

public sealed class GarageTests
{
    private static readonly Rider Robin = Rider.New(Bench.Speaker.Member);

    [Fact]
    public void New_WhereNoneIsLogged_NamesTheFirst()
    {
        var made = Garage.New(Robin, [], "red cruiser", "e1").Must;
        Assert.Equal(BikeId.Of(Robin.Member), made.Saved!.Id);
        Assert.Equal("red cruiser", made.Saved.Name);
        Assert.Equal(made.Saved.Id, made.Rider.Bike);
    }

    [Fact]
    public void New_BesideAnother_HasAShortIdOfItsOwnThatTheSameEventMakesAgain()
    {
        var made = Garage.New(Robin, [Bench.Bike], "blue", "e1").Must.Saved!;
        Assert.Equal(made.Id, Garage.New(Robin, [Bench.Bike], "blue", "e1").Must.Saved!.Id);
        Assert.NotEqual(made.Id, Garage.New(Robin, [Bench.Bike, made], "green", "e1").Must.Saved!.Id);
        Assert.Matches("^bike-[0-9a-f]{6}$", NudgeAnswer.ShortOf(made));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  \u202e ")]
    [InlineData("!!!")]
    [InlineData("BLUE")]
    [InlineData("the first one")]
    [InlineData("a name that is quite a bit longer than forty letters")]
    public void New_NoNameOrOneThatIsTaken_IsRefused(string name) =>
        Assert.Equal("bike-name", Garage.New(Robin, [Bench.Bike, Blue], name, "e1").Refused!.Code);

    [Fact]
    public void New_NameThatSteersTheScreen_IsMadeClean() => Assert.Equal("red", Garage.New(Robin, [Bench.Bike], " re\u202ed\u0007 ", "e1").Must.Saved!.Name);

    [Fact]
    public void New_BesideTwelve_IsRefused()
    {
        var bikes = Enumerable.Range(0, Garage.MostBikes).Select(i => Blue with { Id = new BikeId($"m/bike-{i}"), Name = $"n{i}" }).ToImmutableArray();
        Assert.Equal("many-bikes", Garage.New(Robin, bikes, "one more", "e1").Refused!.Code);
        Assert.NotNull(Garage.New(Robin, bikes[1..], "one more", "e1").Value);
    }

    [Theory]
    [InlineData("blue")]
    [InlineData("BLUE")]
    [InlineData("blu")]
    [InlineData("bike-b")]
    public void Find_ByNameOrPartOfItOrShortId_IsTheBike(string text) => Assert.Same(Blue, Garage.Find([Bench.Bike, Blue], text).Must);

    [Fact]
    public void Find_TheOneWithoutAName_IsTheFirst() => Assert.Same(Bench.Bike, Garage.Find([Bench.Bike, Blue], "first").Must);

    [Fact]
    public void Find_WhatIsNoneOrSeveral_NamesThem()
    {
        var other = Blue with { Id = new BikeId("m/bike-c"), Name = "blue two" };
        Assert.Contains("You have the first one and blue.", Garage.Find([Bench.Bike, Blue], "green").Refused!.Say, StringComparison.Ordinal);
        Assert.Contains("could be blue and blue two", Garage.Find([Blue, other], "blu").Refused!.Say, StringComparison.Ordinal);
        Assert.Equal("bike", Garage.Find([], "x").Refused!.Code);
    }

    [Fact]
    public void InUse_OfAChoiceThatIsGone_IsTheFirst()
    {
        Assert.Same(Blue, Garage.InUse(Robin with { Bike = Blue.Id }, [Bench.Bike, Blue]));
        Assert.Same(Bench.Bike, Garage.InUse(Robin with { Bike = new BikeId("m/bike-gone") }, [Bench.Bike, Blue]));
        Assert.Same(Blue, Garage.InUse(Robin, [Blue]));
        Assert.Equal(BikeId.Of(Robin.Member), Garage.InUse(Robin, []).Id);
    }

    [Fact]
    public void Rename_ToItsOwnNameInCapitals_IsTaken() => Assert.Equal("Blue", Garage.Rename(Robin, [Bench.Bike, Blue], Blue, "Blue").Must.Saved!.Name);

    [Fact]
    public void Remove_TheOneInUse_ForgetsWhatWasToldOfItAndNothingElse()
    {
        var day = Bench.Today;
        var rider = Robin with { Bike = Bench.Bike.Id, Told = [new("m/bike|grease|x", day), new("m/bike-b|grease|x", day)], Later = [new("m/bike|y|x", Bench.Now, false)] };
        var after = Garage.Remove(rider, Bench.Bike).Rider;
        Assert.Null(after.Bike);
        Assert.Equal(["m/bike-b|grease|x"], after.Told.Select(t => t.DueKey));
        Assert.Empty(after.Later);
    }

    private static BikeProfile Blue { get; } = BikeProfile.New(new BikeId("m/bike-b"), Bench.Speaker.Member) with { Name = "blue" };
}
