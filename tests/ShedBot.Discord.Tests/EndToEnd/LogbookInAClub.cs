using System.Text.Json;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.DiscordStandIn.Driving;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Rides, services and the plan, told by commands: seen by the member alone, kept over restarts, removed with all the rest.</summary>
public sealed class LogbookInAClub(ITestOutputHelper output)
{
    [Fact]
    public async Task Log_ARide_IsKeptAndToldToTheRiderAlone()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await UseAsync(house, "ride log", ("distance", "12 km"), ("weather", "wet"), ("day", "yesterday"));
        Assert.True(told.Private);
        Assert.Contains("Noted: 12 km in the wet on", told.Words, StringComparison.Ordinal);
        await house.RestartAsync();
        Assert.Equal((12.0, Weather.Wet), (await BikeAsync(house))!.Riding.Days.Select(d => (d.Kilometres!.Value, d.Weather)).Single());
        house.AssertNoViolations();
    }

    /// <summary>The international mile is 1.609344 km exactly.</summary>
    [Fact]
    public async Task Log_InAClubThatThinksInMiles_ReadsAndSaysMiles()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await (await house.Platform.CommandAsync(house.Owner, house.Lobby, "club set-up", new Dictionary<string, object> { ["units"] = "Imperial" })).Settled;
        Assert.Contains("Noted: 10 miles on", (await UseAsync(house, "ride log", ("distance", "10"))).Words, StringComparison.Ordinal);
        Assert.Equal(16.093, (await BikeAsync(house))!.Riding.Days.Single().Kilometres!.Value, 3);
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData("ride log", "distance", "far", "12 km or 8 miles")]
    [InlineData("ride log", "distance", "0", "is no ride")]
    [InlineData("ride log", "time", "a while", "40 min")]
    [InlineData("ride log", "day", "3/4/2026", "2026-03-01")]
    [InlineData("ride log", "day", "2999-01-01", "still to come")]
    [InlineData("ride pause", "until", "the cows come home", "1 march")]
    [InlineData("ride pace", "days-a-week", "often", "at most 7")]
    [InlineData("ride pace", "days-a-week", "9", "at most 7")]
    [InlineData("service done", "task", "xyzzy", "no service task")]
    [InlineData("service done", "task", "chain", "could be")]
    [InlineData("service fitted", "day", "@everyone `rm`", "cannot read")]
    public async Task Command_BadInput_SaysWhatToWriteAndKeepsNothing(string command, string option, string typed, string says)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await UseAsync(house, command, (option, typed));
        Assert.True(told.Private);
        Assert.Contains(says, told.Words, StringComparison.Ordinal);
        Assert.Null(await BikeAsync(house));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Plan_AfterRidesAndAService_ShowsFiveAndTheRestOnDemand()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        Assert.Contains("I do not know yet how you ride", (await UseAsync(house, "service plan")).Words, StringComparison.Ordinal);
        await UseAsync(house, "ride pace", ("days-a-week", "4"), ("distance", "10 km"));
        await UseAsync(house, "service fitted", ("day", "3 days ago"));
        await UseAsync(house, "ride log", ("distance", "12"), ("day", "yesterday"));
        var plan = await UseAsync(house, "service plan");
        Assert.Contains("are due on your bike", plan.Words, StringComparison.Ordinal);
        Assert.Equal(5, plan.Words.Split('\n').Count(l => l.TrimStart().StartsWith("- ", StringComparison.Ordinal)));
        Assert.Contains("more: /service plan whole:True", plan.Words, StringComparison.Ordinal);
        var whole = await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "service plan", new Dictionary<string, object> { ["whole"] = true })).Settled;
        Assert.Contains("measuring the clutch pads", whole.Message!.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("more than fits here", whole.Message.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Done_ThenUndo_TakesItBack()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        Assert.Contains("Noted: the spokes", (await UseAsync(house, "service done", ("task", "spokes"))).Words, StringComparison.Ordinal);
        Assert.Single((await BikeAsync(house))!.Done);
        await house.RestartAsync();
        Assert.Contains("Taken back: the spokes", (await UseAsync(house, "service undo")).Words, StringComparison.Ordinal);
        Assert.Empty((await BikeAsync(house))!.Done);
        Assert.Contains("Only the last entry", (await UseAsync(house, "ride undo")).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Pause_AndAgain_AreKept()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        Assert.Contains("not riding till further notice", (await UseAsync(house, "ride pause")).Words, StringComparison.Ordinal);
        Assert.Contains("riding again", (await UseAsync(house, "ride again")).Words, StringComparison.Ordinal);
        Assert.Contains("No break is noted", (await UseAsync(house, "ride again")).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    /// <summary>Two uses are two rides; the same use brought twice by the platform is one.</summary>
    [Fact]
    public async Task Log_TwiceAtOnce_AreTwoRidesOfOneDay()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await Task.WhenAll(UseAsync(house, "ride log", ("distance", "5 km")), UseAsync(house, "ride log", ("distance", "7 km")));
        Assert.Equal(12, (await BikeAsync(house))!.Riding.Days.Single().Kilometres);
        Assert.Equal(2, (await BikeAsync(house))!.Handled.Length);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Log_WaitingWhenTheProgramDied_IsEnteredOnceByTheNext()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var member = new MemberId($"{house.Guild.Id}/{house.Rider.Id}");
        await UseAsync(house, "ride log", ("distance", "5 km"));
        var handled = (await BikeAsync(house))!.Handled.Single();
        // What a process leaves that died between the entry and striking the event out, and one that died before the entry.
        await KeepAsync(house, member, ulong.Parse(handled.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture));
        await KeepAsync(house, member, house.Rider.Id + 1);
        await house.RestartAsync();
        await ClubHouse.UntilAsync(() => house.Store.ArrivalsAsync(default).Result.IsEmpty, "what was left to be dealt with");
        Assert.Equal(10, (await BikeAsync(house))!.Riding.Days.Sum(d => d.Kilometres));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task How_OfEveryTask_FitsIntoOneMessageWithItsCautions()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        foreach (var rule in ClubHouse.Knowledge.Service.Values)
        {
            var told = await UseAsync(house, "service how", ("task", rule.Id));
            Assert.DoesNotContain("more than fits here", told.Words, StringComparison.Ordinal);
            Assert.All(rule.Cautions, c => Assert.Contains(c.Word, told.Words, StringComparison.Ordinal));
        }

        house.AssertNoViolations();
    }

    [Fact]
    public async Task Task_WhileTyping_OffersThoseThatFit()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var offered = (await (await house.Platform.CompleteAsync(house.Rider, house.Lobby, "service done", "task", "grea")).Answered).Shown!.Value;
        var choices = Choices(offered);
        Assert.Contains("grease-bar-ball-cam", choices);
        Assert.DoesNotContain("spokes", choices);
        Assert.Equal(25, Choices((await (await house.Platform.CompleteAsync(house.Rider, house.Lobby, "service how", "task", "")).Answered).Shown!.Value).Count);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Export_HandsOverFilesToTheRiderAlone()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log", ("distance", "12 km"));
        var told = await UseAsync(house, "service export");
        Assert.True(told.Private);
        Assert.Equal(["facts.csv", "rides.csv", "work.csv", "bike.json"], told.Files.Select(f => f.FileName));
        Assert.Equal(12, JsonDocument.Parse(told.Files[3].Bytes).RootElement.GetProperty("rides")[0].GetProperty("kilometres").GetDouble());
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Timeline_IsAPictureWithItsDescription_ShownToTheRiderAlone()
    {
        var asked = new List<PictureLook>();
        await using var house = await ClubHouse.OpenAsync(output, paint: (_, look) =>
        {
            asked.Add(look);
            return [0x89, 0x50, 0x4E, 0x47];
        });
        await UseAsync(house, "ride log", ("distance", "12 km"));
        await UseAsync(house, "service done", ("task", "spokes"));
        var told = await UseAsync(house, "service timeline");
        Assert.True(told.Private);
        Assert.Equal("timeline.png", Assert.Single(told.Files).FileName);
        Assert.Contains("The spokes: ", told.Files[0].Description, StringComparison.Ordinal);
        Assert.DoesNotContain("The spokes: ", told.Words, StringComparison.Ordinal);
        Assert.Contains("/service plan whole:True", told.Words, StringComparison.Ordinal);
        await UseAsync(house, "service timeline", ("look", "light"));
        Assert.Equal([PictureLook.Dark, PictureLook.Light], asked);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Timeline_ThatCannotBePainted_IsToldInWords()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log", ("distance", "12 km"));
        await UseAsync(house, "service done", ("task", "spokes"));
        var told = await UseAsync(house, "service timeline");
        Assert.True(told.Private);
        Assert.Empty(told.Files);
        Assert.Contains("The spokes: ", told.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Leave_OfAMember_RemovesRidesAndServicesOfThemAlone()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log", ("distance", "12 km"));
        await UseAsync(house, "service done", ("task", "spokes"));
        await (await house.Platform.CommandAsync(house.Mate, house.Lobby, "ride log")).Settled;
        var asked = await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "shedbot leave")).Settled;
        await (await house.Platform.PressLabelAsync(house.Rider, asked.Message!, "Remove all of it")).Answered;
        await ClubHouse.UntilAsync(() => house.Platform.Now(asked.Message!).Words.Contains("Forgotten", StringComparison.Ordinal), "the end to be told");
        Assert.Contains("1 bike", house.Platform.Now(asked.Message!).Words, StringComparison.Ordinal);
        Assert.Null(await BikeAsync(house));
        Assert.NotNull(await house.Store.FindBikeAsync(BikeId.Of(new MemberId($"{house.Guild.Id}/{house.Mate.Id}")), default));
        Assert.Contains("Nothing is known", (await UseAsync(house, "bike show")).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Bike_AfterARideAndAService_ShowsBoth()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await UseAsync(house, "ride log");
        await UseAsync(house, "service done", ("task", "spokes"));
        var bike = await UseAsync(house, "bike show");
        Assert.Contains("1 day logged", bike.Words, StringComparison.Ordinal);
        Assert.Contains("the spokes", bike.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    private static async Task<SeenMessage> UseAsync(ClubHouse house, string command, params (string Name, string Value)[] options)
    {
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, command, options.ToDictionary(o => o.Name, o => (object)o.Value));
        var answer = await deed.Settled;
        Assert.False(answer.Failed);
        return answer.Message!;
    }

    private static Task<BikeProfile?> BikeAsync(ClubHouse house) => house.Store.FindBikeAsync(BikeId.Of(new MemberId($"{house.Guild.Id}/{house.Rider.Id}")), default);

    /// <summary>A ride of 5 km as the chat brings it, written down before it was dealt with.</summary>
    private static Task KeepAsync(ClubHouse house, MemberId member, ulong interaction) => house.Store.KeepArrivalAsync(
        new Coaching.Keeping.Arrival(
            interaction.ToString(System.Globalization.CultureInfo.InvariantCulture),
            member,
            $$$"""
            {"id":"{{{interaction}}}","application_id":"{{{house.Platform.Bot.Id}}}","type":2,"token":"","guild_id":"{{{house.Guild.Id}}}","channel_id":"{{{house.Lobby.Id}}}",
             "member":{"user":{"id":"{{{house.Rider.Id}}}","username":"robin"}},
             "data":{"id":"1","name":"ride","type":1,"options":[{"name":"log","type":1,"options":[{"name":"distance","type":3,"value":"5 km"}]}]}}
            """,
            DateTimeOffset.UtcNow),
        default);

    private static List<string> Choices(JsonElement shown) =>
        [.. (shown.ValueKind == JsonValueKind.Array ? shown : shown.GetProperty("choices")).EnumerateArray().Select(c => c.GetProperty("value").GetString()!)];
}
