using System.Net.WebSockets;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway.Rig;

/// <summary>A gateway between a platform in memory and a list of what came out. Chance is always a half: waits are 1.25, 2.5, 5 ... seconds.</summary>
internal sealed class GatewayRig : IEventSink, IMessageInterest, IAsyncDisposable
{
    public const string Token = "made.up.token";

    public static readonly Snowflake Me = new(900);

    private readonly List<ScriptedSocket> dialled = [];
    private readonly List<(GatewayEvent Happened, Action Done)> taken = [];
    private readonly Lock gate = new();
    private readonly Discord.Gateway.Gateway gateway;
    private int handedOut;

    public GatewayRig(
        Func<GatewayOptions, GatewayOptions>? change = null, ISessionShelf? shelf = null, GatewayInfo? info = null,
        ILogger<Discord.Gateway.Gateway>? log = null, bool unreachable = false)
    {
        Unreachable = unreachable;
        Info = info ?? new GatewayInfo(new Uri("wss://front.invalid"), 1, 1000, TimeSpan.FromHours(1), 1);
        var options = new GatewayOptions(new BotToken(Token));
        gateway = new Discord.Gateway.Gateway(
            change?.Invoke(options) ?? options, Ask, shelf ?? new NoSessionShelf(), Clock, () => 0.5, log ?? NullLogger<Discord.Gateway.Gateway>.Instance, Dial);
        Run = gateway.RunAsync(this, this, CancellationToken.None);
    }

    public SteppedClock Clock { get; } = new();

    public GatewayInfo Info { get; set; }

    public int TimesAsked { get; private set; }

    public Task Run { get; }

    /// <summary>Nobody picks up while this is set.</summary>
    public bool Unreachable { get; set; }

    public int TimesDialled { get; private set; }

    public Func<MessagePeek, bool> Wanted { get; set; } = _ => true;

    public Action<GatewayEvent>? OnTake { get; set; }

    /// <summary>Every event is done as soon as it is taken.</summary>
    public bool DoneAtOnce { get; set; } = true;

    public IReadOnlyList<GatewayEvent> Taken
    {
        get
        {
            lock (gate)
                return [.. taken.Select(t => t.Happened)];
        }
    }

    public void Finish(int index)
    {
        Action done;
        lock (gate)
            done = taken[index].Done;
        done();
    }

    /// <summary>The next connection that our side opens.</summary>
    public async Task<ScriptedSocket> NextAsync()
    {
        var number = handedOut++;
        await Wait.UntilAsync(() => { lock (gate) return dialled.Count > number; }, $"connection {number} was not opened");
        lock (gate)
            return dialled[number];
    }

    /// <summary>The next connection, time going on until it is there.</summary>
    public async Task<ScriptedSocket> NextInTimeAsync()
    {
        var number = handedOut;
        await InTimeAsync(() => { lock (gate) return dialled.Count > number; });
        return await NextAsync();
    }

    /// <summary>Lets time go on in quarters of a second until it is so.</summary>
    public Task InTimeAsync(Func<bool> so) => Wait.UntilAsync(
        () =>
        {
            Clock.Advance(TimeSpan.FromMilliseconds(250));
            return so();
        },
        "it did not come to pass");

    /// <summary>A connection that has a session: the usual beginning.</summary>
    public async Task<ScriptedSocket> BeginAsync(string session = "s1", string resume = "wss://back.invalid")
    {
        var socket = await NextAsync();
        socket.Hello();
        await socket.HearAsync(2);
        socket.Event("READY", 1, ReadyData(session, resume));
        await TookAsync<Ready>();
        return socket;
    }

    public static string ReadyData(string session, string resume) => $$$"""
        {"v":10,"user":{"id":"900","username":"coach","bot":true},"guilds":[{"id":"70","unavailable":true}],"session_id":"{{{session}}}",
         "resume_gateway_url":"{{{resume}}}","application":{"id":"901","flags":0}}
        """;

    public async Task<T> TookAsync<T>(int nth = 1)
        where T : GatewayEvent
    {
        await Wait.UntilAsync(() => Taken.OfType<T>().Count() >= nth, $"{typeof(T).Name} did not come {nth} times");
        return Taken.OfType<T>().ElementAt(nth - 1);
    }

    public Task StopAsync(bool keepSession) => gateway.StopAsync(keepSession);

    public void Take(GatewayEvent happened, Action done)
    {
        lock (gate)
            taken.Add((happened, done));
        OnTake?.Invoke(happened);
        if (DoneAtOnce)
            done();
    }

    public bool Wants(in MessagePeek message) => Wanted(message);

    public async ValueTask DisposeAsync()
    {
        lock (gate)
            foreach (var socket in dialled)
                socket.Abort();
        await gateway.StopAsync(keepSession: true).WaitAsync(Wait.Guard);
        gateway.Dispose();
    }

    private Task<GatewayInfo> Ask(CancellationToken ct)
    {
        TimesAsked++;
        return Task.FromResult(Info);
    }

    private Task<WebSocket> Dial(Uri url, CancellationToken ct)
    {
        lock (gate)
        {
            TimesDialled++;
            if (Unreachable)
                throw new WebSocketException(WebSocketError.Faulted);
            var socket = new ScriptedSocket(url);
            dialled.Add(socket);
            return Task.FromResult<WebSocket>(socket);
        }
    }
}
