using System.Text.Json;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.DiscordStandIn.Driving;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What is known of a bike, and more bikes than one: by commands, forms and buttons, seen by the member alone.</summary>
public sealed class BikesInAClub(ITestOutputHelper output)
{
    [Fact]
    public async Task Tell_AFact_IsKeptAndShown()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await UseAsync(house, "bike tell", ("what", "bar-length"), ("value", "18,2 mm"));
        Assert.True(told.Private);
        Assert.Contains("Noted: bar length 18.2 mm", told.Words, StringComparison.Ordinal);
        Assert.Contains("bar length: 18.2 mm (told on", (await UseAsync(house, "bike show")).Words, StringComparison.Ordinal);
        Assert.Contains("Write a length from 10 to 60 mm", (await UseAsync(house, "bike tell", ("what", "bar"), ("value", "long"))).Words, StringComparison.Ordinal);
        Assert.Contains("bar length not known", (await UseAsync(house, "bike tell", ("what", "bar length"))).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task SetUp_AForm_IsFilledInBeforehandAndKeepsWhatCanBeRead()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "bike tell", ("what", "engine-size"), ("value", "66cc"));
        var asked = await UseAsync(house, "bike set-up");
        var form = await house.Platform.PressLabelAsync(house.Rider, asked, "Engine and fuel");
        var shown = (await form.Answered).Shown!.Value.GetRawText();
        Assert.Contains("\"66cc\"", shown, StringComparison.Ordinal);
        Assert.Equal(5, JsonDocument.Parse(shown).RootElement.GetProperty("components").GetArrayLength());

        var said = (await (await house.Platform.SubmitAsync(form, new Dictionary<string, object> { ["oil-ratio"] = "1:24", ["main-jet"] = "brass" })).Settled).Message!;
        Assert.True(said.Private);
        Assert.Contains("Noted: oil in the fuel 24:1", said.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("engine size", said.Words.Split("Not noted")[0], StringComparison.Ordinal);
        Assert.Contains("main jet: I cannot read", said.Words, StringComparison.Ordinal);
        Assert.Equal(["engine-size", "oil-ratio"], (await BikesAsync(house)).Single().Facts.Keys);
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData("Drive and wheel", "wheel", "26 x 2.125", "54-559")]
    [InlineData("Clutch", "outer-bearing", "2RS", "sealed")]
    public async Task SetUp_EachForm_KeepsItsFields(string button, string field, string typed, string kept)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var form = await house.Platform.PressLabelAsync(house.Rider, await UseAsync(house, "bike set-up"), button);
        await (await house.Platform.SubmitAsync(form, new Dictionary<string, object> { [field] = typed })).Settled;
        Assert.Equal(kept, (await BikesAsync(house)).Single().Facts[field].Value);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task New_ASecondBike_IsNamedOnEveryCardAndInACase()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log", ("distance", "5 km"));
        await UseAsync(house, "bike new", ("name", "blue @everyone"));
        Assert.Contains("(blue @", (await UseAsync(house, "ride log", ("distance", "7 km"))).Words, StringComparison.Ordinal);
        Assert.Contains("(the first one)", (await UseAsync(house, "ride log", ("distance", "1 km"), ("bike", "first"))).Words, StringComparison.Ordinal);
        Assert.Equal([6.0, 7.0], (await BikesAsync(house)).Select(b => b.Riding.Days.Single().Kilometres!.Value));
        Assert.Contains("blue", (await UseAsync(house, "bike list")).Words, StringComparison.Ordinal);

        await UseAsync(house, "trouble", ("words", "the clutch drags, lever in and it still pulls"), ("bike", "first"));
        var opened = await house.Platform.WaitForMessageAsync(m => !m.Private && m.Words.Contains("I take it to be about the first one", StringComparison.Ordinal));
        Assert.Contains("/case leave, and then /trouble with its name", opened.Words, StringComparison.Ordinal);
        Assert.Equal((await BikesAsync(house))[0].Id, (await house.Store.CasesOfAsync(Member(house), 1, default)).Single().Bike);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Bike_WhileTyping_OffersTheMembersOwn()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log");
        await UseAsync(house, "bike new", ("name", "blue"));
        Assert.Equal(["bike", (await BikesAsync(house))[1].Id.Value.Split('/')[^1]], await OfferedAsync(house, "bike use", "bike", ""));
        Assert.Single(await OfferedAsync(house, "ride log", "bike", "blu"));
        Assert.Contains("bar-length", await OfferedAsync(house, "bike tell", "what", "bar"));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Remove_IsAskedFirstAndSaysWhatRemains()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log");
        await UseAsync(house, "bike new", ("name", "blue"));
        var kept = await UseAsync(house, "bike remove", ("bike", "blue"));
        await (await house.Platform.PressLabelAsync(house.Rider, kept, "No, keep it")).Answered;
        Assert.Equal(2, (await BikesAsync(house)).Length);

        var asked = await UseAsync(house, "bike remove", ("bike", "blue"));
        await (await house.Platform.PressLabelAsync(house.Rider, asked, "Yes, remove blue")).Answered;
        await ClubHouse.UntilAsync(() => house.Platform.Now(asked).Words.Contains("Removed: blue", StringComparison.Ordinal), "the end to be told");
        Assert.Contains("cases talked through", house.Platform.Now(asked).Words, StringComparison.Ordinal);
        Assert.Single(await BikesAsync(house));
        house.AssertNoViolations();
    }

    /// <summary>The platform takes ten files in a message.</summary>
    [Fact]
    public async Task Export_OfThreeBikes_ComesInSeveralMessages()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log");
        foreach (var name in new[] { "blue", "green" }) await UseAsync(house, "bike new", ("name", name));
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, "service export");
        Assert.Equal(10, (await deed.Settled).Message!.Files.Count);
        await ClubHouse.UntilAsync(() => deed.FollowUps.Count == 1, "the rest of the files");
        var all = (await deed.Settled).Message!.Files.Concat(deed.FollowUps[0].Files).Select(f => f.FileName).ToList();
        Assert.Equal(12, all.Distinct().Count());
        Assert.Contains("green-bike.json", all);
        house.AssertNoViolations();
    }

    private static async Task<SeenMessage> UseAsync(ClubHouse house, string command, params (string Name, string Value)[] options)
    {
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, command, options.ToDictionary(o => o.Name, o => (object)o.Value));
        return (await deed.Settled).Message!;
    }

    private static async Task<List<string>> OfferedAsync(ClubHouse house, string command, string option, string typed) =>
        [.. (await (await house.Platform.CompleteAsync(house.Rider, house.Lobby, command, option, typed)).Answered).Shown!.Value.GetProperty("choices").EnumerateArray().Select(c => c.GetProperty("value").GetString()!)];

    private static async Task<System.Collections.Immutable.ImmutableArray<BikeProfile>> BikesAsync(ClubHouse house) => await house.Store.BikesOfAsync(Member(house), default);

    private static MemberId Member(ClubHouse house) => new($"{house.Guild.Id}/{house.Rider.Id}");
}
