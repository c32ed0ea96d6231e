using System.Text.Json;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>Deals with the events of one shard, over all its connections: keeps the session up to date and hands on what somebody wants.</summary>
/// <remarks>Called on the reading thread only; <see cref="Session"/> may be read from any.</remarks>
internal sealed class Dispatcher(ShardSetting my, Session? session)
{
    private volatile Session? session = session;
    private volatile bool shut;

    public Session? Session => session;

    /// <summary>Our own id; none before the first session.</summary>
    public Snowflake Me => session?.Me.Id ?? default;

    /// <summary>When this connection's session began or went on, as a timestamp of our clock; null before that.</summary>
    public long? EstablishedAt { get; private set; }

    /// <summary>This connection has told something of an older session.</summary>
    public bool Moved { get; private set; }

    public void Forget() => session = null;

    public void Connecting()
    {
        shut = false;
        Moved = false;
        EstablishedAt = null;
    }

    /// <summary>We are leaving: what still comes in is left for the next session to tell.</summary>
    public void Shut() => shut = true;

    /// <exception cref="JsonException">A session began that cannot be used.</exception>
    public void Take(in Envelope envelope)
    {
        if (shut)
            return;
        GatewayMetrics.Event(envelope.Kind);
        if (envelope.Kind == EventKind.Ready)
        {
            var sequence = envelope.Sequence ?? 1;
            var begun = EventReader.ReadReady(envelope.Data, my.Home, sequence - 1);
            Establish(begun, sequence, fresh: true);
            return;
        }
        if (session is not { } current)
            return; // Nothing is told before READY.
        Moved = true;
        var at = envelope.Sequence ?? current.Progress.Last;
        if (envelope.Kind == EventKind.Resumed)
            Establish(current, at, fresh: false);
        else if (Read(envelope) is { } happened)
            Hand(happened, current, at, envelope.Kind);
        else
            current.Progress.Pass(at);
    }

    private GatewayEvent? Read(in Envelope envelope)
    {
        if (envelope.Kind is EventKind.None or EventKind.Other)
            return null;
        try
        {
            if (envelope.Kind == EventKind.MessageCreate)
            {
                if (!envelope.Message.IsMessage)
                    my.Log.OddEvent(my.Shard, envelope.Kind, "no id");
                else if (my.Interest.Wants(envelope.Message))
                    return EventReader.Read(envelope.Kind, envelope.Data, my.Clock.GetUtcNow());
                return null;
            }
            var happened = EventReader.Read(envelope.Kind, envelope.Data, my.Clock.GetUtcNow());
            if (happened is null)
                my.Log.OddEvent(my.Shard, envelope.Kind, "no id");
            return happened;
        }
        catch (Exception e) // Also what IMessageInterest throws: one event must not end the reading.
        {
            my.Log.OddEvent(my.Shard, envelope.Kind, e.GetType().Name);
            return null;
        }
    }

    private void Establish(Session current, long sequence, bool fresh)
    {
        session = current;
        EstablishedAt = my.Clock.GetTimestamp();
        var guilds = current.Guilds();
        if (fresh)
            my.Log.SessionBegan(my.Shard, guilds.Count);
        else
            my.Log.SessionGoesOn(my.Shard, sequence);
        var ready = new Ready(current.Me, current.Application, guilds, my.Shard, my.Shards, fresh) { At = my.Clock.GetUtcNow() };
        Hand(ready, current, sequence, fresh ? EventKind.Ready : EventKind.Resumed);
    }

    private void Hand(GatewayEvent happened, Session current, long sequence, EventKind kind)
    {
        current.Note(happened);
        var done = current.Progress.Begin(sequence);
        try
        {
            my.Sink.Take(happened, done);
        }
        catch (Exception e) // A mistake of whoever takes events must not end the reading.
        {
            my.Log.SinkFailed(e, my.Shard, kind);
            done();
        }
    }
}
