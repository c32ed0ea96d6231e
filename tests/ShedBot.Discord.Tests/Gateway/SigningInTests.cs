using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source of what is expected: the platform's public description, "Gateway" (connecting, heartbeats, identify) and "Gateway events" (send events).</summary>
public sealed class SigningInTests
{
    [Fact]
    public async Task RunAsync_Hello_IdentifiesOnceWithIntentsAndWithoutAPrefixToTheToken()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();

        var identify = await socket.HearAsync(2);
        Assert.Equal(GatewayRig.Token, identify.GetProperty("token").GetString());
        Assert.Equal(4609, identify.GetProperty("intents").GetInt32()); // GUILDS 1 + GUILD_MESSAGES 512 + DIRECT_MESSAGES 4096.
        Assert.Equal("[0,1]", identify.GetProperty("shard").GetRawText());
        Assert.Equal(["browser", "device", "os"], identify.GetProperty("properties").EnumerateObject().Select(p => p.Name).Order());
        Assert.False(identify.TryGetProperty("presence", out _));
        socket.Hello(); // A second hello must not bring a second identify: that closes with 4005.
        socket.Event("THREAD_DELETE", 2, """{"id":"5","guild_id":"70"}""");
        await rig.TookAsync<ThreadGone>();
        Assert.Single(socket.Heard, h => h.GetProperty("op").GetInt32() == 2);
    }

    [Fact]
    public async Task RunAsync_Address_HasVersionAndEncoding()
    {
        await using var rig = new GatewayRig();
        Assert.Equal("wss://front.invalid/?v=10&encoding=json", (await rig.NextAsync()).Url.AbsoluteUri);
    }

    [Fact]
    public async Task RunAsync_Compress_AsksForOneStreamForTheConnection()
    {
        await using var rig = new GatewayRig(o => o with { Compress = true });
        Assert.Equal("?v=10&encoding=json&compress=zlib-stream", (await rig.NextAsync()).Url.Query);
    }

    [Fact]
    public async Task RunAsync_UrlInTheOptions_IsUsedInPlaceOfTheAdvisedOne()
    {
        await using var rig = new GatewayRig(o => o with { Url = new Uri("ws://127.0.0.1:4321/gw") });
        Assert.Equal("ws://127.0.0.1:4321/gw?v=10&encoding=json", (await rig.NextAsync()).Url.AbsoluteUri);
    }

    [Fact]
    public async Task RunAsync_Presence_IsWithinTheIdentify()
    {
        await using var rig = new GatewayRig(o => o with { Presence = "two strokes, one coach" });
        var socket = await rig.NextAsync();
        socket.Hello();
        var presence = (await socket.HearAsync(2)).GetProperty("presence");
        Assert.Equal(["activities", "afk", "since", "status"], presence.EnumerateObject().Select(p => p.Name).Order());
        Assert.Equal("two strokes, one coach", presence.GetProperty("activities")[0].GetProperty("state").GetString());
    }

    [Fact]
    public async Task RunAsync_FirstBeat_ComesAfterJitterThenEveryInterval()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.NextAsync();
        socket.Hello(40_000);
        await socket.HearAsync(2);
        Assert.DoesNotContain(socket.Heard, h => h.GetProperty("op").GetInt32() == 1);
        await rig.Clock.PassAsync(20); // interval * jitter, and chance is a half here.
        Assert.Equal(System.Text.Json.JsonValueKind.Null, (await socket.HearAsync(1)).ValueKind); // null before the first sequence.
        socket.Event("READY", 1, GatewayRig.ReadyData("s1", "wss://back.invalid"));
        await rig.TookAsync<Ready>();
        await rig.Clock.PassAsync(40);
        Assert.Equal(1, (await socket.HearAsync(1, nth: 2)).GetInt64());
    }

    [Fact]
    public async Task RunAsync_Op1_IsAnsweredAtOnceWithTheLastSequence()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        socket.Event("TYPING_START", 17, "{}");
        socket.Say("""{"op":1,"d":null,"s":null,"t":null}""");
        Assert.Equal(17, (await socket.HearAsync(1)).GetInt64());
    }

    [Fact]
    public async Task RunAsync_AStormOfOp1_StaysUnderTheSendLimit()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.BeginAsync();
        for (var i = 0; i < 300; i++)
            socket.Say("""{"op":1}""");
        socket.Event("THREAD_DELETE", 2, """{"id":"5","guild_id":"70"}""");
        await rig.TookAsync<ThreadGone>();
        await rig.Clock.PassAsync(20); // The beat that keeps the connection is let through all the same.
        await Wait.UntilAsync(() => socket.Heard.Count >= 111, "the needed beat was not sent");
        Assert.Equal(111, socket.Heard.Count); // 120 a minute is the platform's limit; 110 is ours.
        Assert.InRange(socket.BytesOfLongest, 1, Limits.GatewayPayloadBytes);
    }

    [Fact]
    public async Task RunAsync_Ready_GivesUsOurselvesAndTheClubs()
    {
        await using var rig = new GatewayRig();
        await rig.BeginAsync();
        var ready = await rig.TookAsync<Ready>();
        Assert.Equal((GatewayRig.Me, new Snowflake(901), true, 0), (ready.Me.Id, ready.Application, ready.Fresh, ready.Shard));
        Assert.Equal([new Snowflake(70)], ready.Guilds);
        Assert.Equal(rig.Clock.GetUtcNow(), ready.At);
    }

    [Fact]
    public async Task RunAsync_NoHello_HangsUpAndTriesAgain()
    {
        await using var rig = new GatewayRig();
        var socket = await rig.NextAsync();
        await rig.Clock.PassAsync(25);
        await Wait.UntilAsync(() => socket.LeftWith is not null, "it still waits for a hello");
        await rig.Clock.PassAsync(1.25);
        await rig.NextAsync();
    }

    [Theory]
    [InlineData("""{"op":10,"d":{"heartbeat_interval":0}}""")]
    [InlineData("""{"op":10,"d":{"heartbeat_interval":-5}}""")]
    [InlineData("""{"op":10,"d":{}}""")]
    [InlineData("""{"op":10,"d":null}""")]
    [InlineData("""{"op":10}""")]
    [InlineData("""{"op":10,"d":{"heartbeat_interval":"soon"}}""")]
    public async Task RunAsync_AHelloThatCannotBeUsed_TriesAgain(string hello)
    {
        await using var rig = new GatewayRig();
        var socket = await rig.NextAsync();
        socket.Say(hello);
        await rig.Clock.PassAsync(1.25);
        await rig.BeginAsync();
        Assert.Equal(4000, socket.LeftWith);
    }
}
