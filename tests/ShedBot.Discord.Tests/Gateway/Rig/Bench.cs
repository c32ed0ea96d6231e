using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway.Rig;

/// <summary>The reading half alone, on a connection of our making: what goes in as bytes comes out as events.</summary>
internal sealed class Bench : IEventSink, IMessageInterest
{
    public Bench(bool compress = false, bool session = true)
    {
        Setting = new ShardSetting(
            0, 1, new GatewayOptions(new BotToken(GatewayRig.Token)) { Compress = compress }, new Uri("wss://front.invalid"),
            (_, _) => Task.FromResult<System.Net.WebSockets.WebSocket>(Socket), this, this, new SteppedClock(), () => 0.5, () => true, NullLogger.Instance);
        Dispatcher = new Dispatcher(
            Setting, session ? new Session("s1", Setting.Home, new User(GatewayRig.Me), new Snowflake(901), [], 0) : null);
    }

    public ShardSetting Setting { get; }

    public Dispatcher Dispatcher { get; }

    public ScriptedSocket Socket { get; } = new(new Uri("wss://front.invalid"));

    public List<GatewayEvent> Taken { get; } = [];

    public List<MessagePeek> Peeks { get; } = [];

    public Func<MessagePeek, bool> Wanted { get; set; } = _ => true;

    /// <summary>Reads all that the socket was given, up to the end that it was given last.</summary>
    public Task<Ending> ReadAsync() =>
        new ShardConnection(Setting, Dispatcher, () => { }).RunAsync(Setting.Home, CancellationToken.None).WaitAsync(Wait.Guard);

    public void Take(string name, long sequence, string data) =>
        Dispatcher.Take(Envelope.Read(System.Text.Encoding.UTF8.GetBytes($$"""{"t":"{{name}}","s":{{sequence}},"op":0,"d":{{data}}}"""), Dispatcher.Me));

    public void Take(GatewayEvent happened, Action done)
    {
        Taken.Add(happened);
        done();
    }

    public bool Wants(in MessagePeek message)
    {
        Peeks.Add(message);
        return Wanted(message);
    }
}
