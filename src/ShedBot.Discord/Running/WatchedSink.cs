using ShedBot.Discord.Gateway;

namespace ShedBot.Discord.Running;

/// <summary>Notes when something came in, for the health of the process.</summary>
internal sealed class WatchedSink(IEventSink next, TimeProvider clock) : IEventSink
{
    private long lastHeard;
    private volatile bool ready;

    public bool Ready => ready;

    public DateTimeOffset? LastHeard => Interlocked.Read(ref lastHeard) is var ticks and > 0 ? new DateTimeOffset(ticks, TimeSpan.Zero) : null;

    public void Take(GatewayEvent happened, Action done)
    {
        if (happened is Ready) ready = true;
        Interlocked.Exchange(ref lastHeard, clock.GetUtcNow().UtcTicks);
        next.Take(happened, done);
    }
}
