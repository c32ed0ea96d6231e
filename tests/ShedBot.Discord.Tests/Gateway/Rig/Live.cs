using System.Collections.Concurrent;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using ShedBot.DiscordStandIn;

namespace ShedBot.Discord.Tests.Gateway.Rig;

/// <summary>The gateway as it is, over real sockets and the real clock, against the stand-in.</summary>
internal sealed class Live : IEventSink, IMessageInterest, IAsyncDisposable
{
    private readonly Discord.Gateway.Gateway gateway;

    public Live(StandIn platform, ISessionShelf? shelf = null, bool compress = false)
    {
        var info = new GatewayInfo(new Uri(platform.GatewayAddress), 1, 1000, TimeSpan.FromHours(1), 1);
        gateway = new Discord.Gateway.Gateway(
            new GatewayOptions(new BotToken(platform.Options.Token)) { Compress = compress }, _ => Task.FromResult(info), shelf ?? new NoSessionShelf(),
            TimeProvider.System, () => 0, NullLogger<Discord.Gateway.Gateway>.Instance);
        Run = gateway.RunAsync(this, this, CancellationToken.None);
    }

    public Task Run { get; }

    public ConcurrentQueue<GatewayEvent> Taken { get; } = [];

    public async Task<T> TookAsync<T>(int nth = 1)
        where T : GatewayEvent
    {
        await Wait.UntilAsync(() => Taken.OfType<T>().Count() >= nth, $"{typeof(T).Name} did not come {nth} times");
        return Taken.OfType<T>().ElementAt(nth - 1);
    }

    public Task StopAsync(bool keepSession) => gateway.StopAsync(keepSession);

    public void Take(GatewayEvent happened, Action done)
    {
        Taken.Enqueue(happened);
        done();
    }

    public bool Wants(in MessagePeek message) => !message.FromBot;

    public async ValueTask DisposeAsync()
    {
        await gateway.StopAsync(keepSession: true).WaitAsync(Wait.Guard);
        gateway.Dispose();
    }
}
