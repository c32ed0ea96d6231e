using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Tests.Gateway.Rig;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source of what is expected: the platform's public description, "Gateway", sharding and session start limit: one identify for each key (shard number modulo
/// max_concurrency) in five seconds, none when none remain.</summary>
public sealed class ShardsTests
{
    private static GatewayInfo Info(int shards, int remaining, int concurrency) =>
        new(new Uri("wss://front.invalid"), shards, remaining, TimeSpan.FromSeconds(30), concurrency);

    [Fact]
    public async Task RunAsync_AdvisedNumber_IsTakenWhenNoneIsConfigured()
    {
        await using var rig = new GatewayRig(info: Info(2, 1000, 2));
        var identifies = new List<string>();
        for (var i = 0; i < 2; i++)
        {
            var socket = await rig.NextAsync();
            socket.Hello();
            identifies.Add((await socket.HearAsync(2)).GetProperty("shard").GetRawText());
        }
        Assert.Equal(["[0,2]", "[1,2]"], identifies.Order());
    }

    [Fact]
    public async Task RunAsync_ConfiguredNumber_WinsOverTheAdvisedOne()
    {
        await using var rig = new GatewayRig(o => o with { Shards = 1 }, info: Info(4, 1000, 4));
        var socket = await rig.NextAsync();
        socket.Hello();
        Assert.Equal("[0,1]", (await socket.HearAsync(2)).GetProperty("shard").GetRawText());
    }

    [Fact]
    public async Task RunAsync_OneLane_ShardsIdentifyFiveSecondsApart()
    {
        await using var rig = new GatewayRig(info: Info(3, 1000, 1));
        var last = default(DateTimeOffset);
        for (var i = 0; i < 3; i++)
        {
            var socket = await rig.NextInTimeAsync();
            Assert.True(rig.Clock.GetUtcNow() - last >= TimeSpan.FromSeconds(5));
            socket.Hello();
            await socket.HearAsync(2);
            last = rig.Clock.GetUtcNow();
            Assert.Equal(i + 1, rig.TimesDialled);
        }
    }

    [Fact]
    public async Task EnterAsync_TheSameLane_WaitsForTheFiveSecondsAfterTheIdentify()
    {
        var clock = new SteppedClock();
        var gate = Gate(Info(4, 1000, 2), clock);
        using var first = await gate.EnterAsync(0, CancellationToken.None);
        using var otherLane = await gate.EnterAsync(1, CancellationToken.None);
        var second = gate.EnterAsync(2, CancellationToken.None); // 2 % 2 = 0.
        Assert.False(second.IsCompleted);
        first.Use();
        await clock.PassAsync(5);
        using var place = await second.WaitAsync(Wait.Guard);
    }

    [Fact]
    public async Task EnterAsync_APlaceThatWasNotUsed_CostsNothing()
    {
        var gate = Gate(Info(1, 1, 1), new SteppedClock());
        (await gate.EnterAsync(0, CancellationToken.None)).Dispose(); // The connection failed before the identify.
        using var place = await gate.EnterAsync(0, CancellationToken.None).WaitAsync(Wait.Guard);
    }

    [Fact]
    public async Task EnterAsync_NoneRemain_WaitsForTheResetAndAsksAgain()
    {
        var clock = new SteppedClock();
        var asked = 0;
        var gate = new IdentifyGate(
            Info(1, 0, 1), _ => Task.FromResult(Info(1, asked++ == 0 ? 0 : 5, 1)), clock, Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance);
        var entering = gate.EnterAsync(0, CancellationToken.None);
        await clock.PassAsync(30);
        await clock.PassAsync(30);
        using var place = await entering.WaitAsync(Wait.Guard);
        Assert.Equal(2, asked);
    }

    [Fact]
    public async Task RunAsync_OneShardIsRefusedForGood_AllStop()
    {
        await using var rig = new GatewayRig(info: Info(2, 1000, 2));
        var first = await rig.BeginAsync();
        var second = await rig.NextAsync();
        second.Hello();
        second.CloseWith(4014);
        Assert.Equal(4014, (await Assert.ThrowsAsync<GatewayFatalException>(() => rig.Run.WaitAsync(Wait.Guard))).Code);
        Assert.Equal(4000, first.LeftWith);
    }

    [Fact]
    public async Task RunAsync_ThePlatformCannotBeAsked_AsksAgainLater()
    {
        var clock = new SteppedClock();
        var asked = 0;
        using var gateway = Over(clock, () => ++asked < 3 ? throw Refusal(Trouble.Busy) : Task.FromResult(Info(1, 1, 1)));
        using var rig = new CancellationTokenSource();
        var run = gateway.RunAsync(new Bench(), new Bench(), rig.Token);
        await clock.PassAsync(1.25);
        await clock.PassAsync(2.5);
        await Wait.UntilAsync(() => asked == 3, "it was not asked again");
        await rig.CancelAsync();
        await run.WaitAsync(Wait.Guard);
    }

    [Fact]
    public async Task RunAsync_TheTokenIsRefusedWhenAsking_StopsWithAdvice()
    {
        using var gateway = Over(new SteppedClock(), () => throw Refusal(Trouble.Token));
        var stopped = await Assert.ThrowsAsync<GatewayFatalException>(() => gateway.RunAsync(new Bench(), new Bench(), CancellationToken.None));
        Assert.Contains("token", stopped.Message, StringComparison.Ordinal);
    }

    private static DiscordException Refusal(Trouble trouble) => new(trouble, default, 0, "GET /gateway/bot", "made up");

    private static IdentifyGate Gate(GatewayInfo info, SteppedClock clock) =>
        new(info, _ => Task.FromResult(info), clock, Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance);

    private static Discord.Gateway.Gateway Over(SteppedClock clock, Func<Task<GatewayInfo>> ask) => new(
        new GatewayOptions(new Wire.BotToken("t")), _ => ask(), new NoSessionShelf(), clock, () => 0.5,
        Microsoft.Extensions.Logging.Abstractions.NullLogger<Discord.Gateway.Gateway>.Instance,
        (_, _) => Task.FromResult<System.Net.WebSockets.WebSocket>(new ScriptedSocket(new Uri("wss://front.invalid"))));
}
