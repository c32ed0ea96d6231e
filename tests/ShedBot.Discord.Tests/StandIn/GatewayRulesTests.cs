using System.Text.Json;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>The stand-in against the platform's published gateway pages (events/gateway, topics/opcodes-and-status-codes, August 2026).</summary>
public class GatewayRulesTests
{
    [Fact]
    public async Task Login_OneClub_IsToldReadyThenTheClub()
    {
        await using var platform = await StandIn.StartAsync();
        var club = await platform.AddGuildAsync("Invented club");
        platform.AddTextChannel(club, "workshop");
        await using var bot = await BareBot.LoggedInAsync(platform);
        var told = await bot.NextAsync("GUILD_CREATE");
        Assert.Equal(club.Id.ToString(), told.GetProperty("id").GetString());
        Assert.Single(told.GetProperty("channels").EnumerateArray());
        Assert.Empty(platform.Violations);
    }

    [Fact]
    public async Task Say_WithoutContentIntent_IsBlankedUnlessTheBotIsNamedOrAnsweredOrSpokenToAlone()
    {
        await using var platform = await StandIn.StartAsync();
        var club = await platform.AddGuildAsync("Invented club");
        var room = platform.AddTextChannel(club, "workshop");
        var ann = platform.AddPerson("invented-ann");
        platform.Join(club, ann);
        await using var bot = await BareBot.LoggedInAsync(platform);
        var (_, own) = await bot.CallAsync("POST", $"channels/{room.Id}/messages", """{"content":"ours"}""");
        Assert.Equal("ours", (await bot.NextAsync("MESSAGE_CREATE")).GetProperty("content").GetString());
        var ours = platform.Messages(room)[0];

        async Task<string?> HeardAsync() => (await bot.NextAsync("MESSAGE_CREATE")).GetProperty("content").GetString();
        await platform.SayAsync(ann, room, "only among us");
        Assert.Equal("", await HeardAsync());
        await platform.SayAsync(ann, room, "you there", mentions: platform.Bot);
        Assert.EndsWith("you there", await HeardAsync());
        await platform.SayAsync(ann, room, "yes", replyTo: ours);
        Assert.Equal("yes", await HeardAsync());
        await platform.SayAsync(ann, room, "quietly", replyTo: ours, quietReply: true);
        Assert.Equal("", await HeardAsync());
        await platform.SayAsync(ann, platform.DirectChannel(ann), "alone");
        Assert.Equal("alone", await HeardAsync());
        Assert.Equal(own.GetProperty("id").GetString(), ours.Id.ToString());
    }

    [Fact]
    public async Task Resume_AfterADrop_ReplaysWhatWasMissedThenSaysSo()
    {
        await using var platform = await StandIn.StartAsync();
        var ann = platform.AddPerson("invented-ann");
        var direct = platform.DirectChannel(ann);
        await using var bot = await BareBot.LoggedInAsync(platform);
        bot.Drop();
        await platform.WaitUntilAsync(() => platform.Connections[0].EndedAt is not null, "the end of the link");
        await platform.SayAsync(ann, direct, "missed");
        await using var again = await BareBot.ConnectedAsync(platform, bot.ResumeAddress);
        await again.SendAsync(6, $$"""{"token":"{{platform.Options.Token}}","session_id":"{{bot.SessionId}}","seq":{{bot.Sequence}}}""");
        Assert.Equal("missed", (await again.NextAsync("MESSAGE_CREATE")).GetProperty("content").GetString());
        await again.NextAsync("RESUMED");
        Assert.Equal("/resume/", platform.Connections[1].Path);
    }

    [Fact]
    public async Task Resume_OnTheSameSocketAfterOp9True_GoesOn()
    {
        await using var platform = await StandIn.StartAsync();
        await using var bot = await BareBot.LoggedInAsync(platform);
        platform.Strike(FaultKind.InvalidSessionKept);
        var frame = await bot.FrameAsync();
        Assert.Equal(9, frame.GetProperty("op").GetInt32());
        Assert.True(frame.GetProperty("d").GetBoolean());
        await bot.SendAsync(6, $$"""{"token":"{{platform.Options.Token}}","session_id":"{{bot.SessionId}}","seq":{{bot.Sequence}}}""");
        await bot.NextAsync("RESUMED");
        Assert.Equal(1, platform.Faults.Injected[FaultKind.InvalidSessionKept]);
    }

    [Theory]
    [InlineData("""{"op":2,"d":{"token":"wrong","intents":1,"properties":{}}}""", 4004)]
    [InlineData("""{"op":2,"d":{"token":"invented.token.of-nobody","intents":1152921504606846976,"properties":{}}}""", 4013)]
    [InlineData("""{"op":2,"d":{"token":"invented.token.of-nobody","intents":32768,"properties":{}}}""", 4014)]
    [InlineData("""{"op":2,"d":{"token":"invented.token.of-nobody","intents":1,"properties":{},"shard":[3,2]}}""", 4010)]
    [InlineData("""{"op":99,"d":null}""", 4001)]
    [InlineData("""{"op":3,"d":{}}""", 4003)]
    [InlineData("not json", 4002)]
    public async Task FirstWord_Wrong_IsClosedWithItsCode(string text, int code)
    {
        await using var platform = await StandIn.StartAsync();
        await using var bot = await BareBot.ConnectedAsync(platform, platform.GatewayAddress);
        await bot.SendTextAsync(text);
        Assert.Equal(code, await bot.CloseCodeAsync());
    }

    [Fact]
    public async Task Sends_TooLargeTooManyOrTwoIdentifies_AreClosedAndRemembered()
    {
        await using var platform = await StandIn.StartAsync();
        await using var large = await BareBot.ConnectedAsync(platform, platform.GatewayAddress);
        await large.SendTextAsync("""{"op":1,"d":null,"x":"AAAA"}""".Replace("AAAA", new string('a', 4097), StringComparison.Ordinal));
        Assert.Equal(4002, await large.CloseCodeAsync());
        await using var twice = await BareBot.LoggedInAsync(platform);
        await twice.SendAsync(2, JsonSerializer.Serialize(new { token = platform.Options.Token, intents = 1, properties = new { } }));
        Assert.Equal(4005, await twice.CloseCodeAsync());
        await using var many = await BareBot.ConnectedAsync(platform, platform.GatewayAddress);
        for (var i = 0; i < 121; i++)
            await many.SendAsync(1, "null");
        Assert.Equal(4008, await many.CloseCodeAsync());
        Assert.Equal(3, platform.Violations.Count);
    }
}
