using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Hands events to the sessions, through the faults that may befall them. Call under the realm's lock.</summary>
internal sealed class Hub(FaultInjector faults)
{
    /// <summary>Set right after construction; the realm and the hub know each other.</summary>
    public Realm Realm { get; set; } = null!;

    public List<Session> Sessions { get; } = [];

    public List<Connection> Connections { get; } = [];

    public List<ConnectionReport> Reports { get; } = [];

    private DateTimeOffset? lastIdentify;

    /// <summary>Identifies so far, those refused for haste included.</summary>
    public int Identifies { get; private set; }

    /// <summary>An event held back until one of another channel has gone out.</summary>
    private GatewayEvent? held;

    public void Dispatch(GatewayEvent e)
    {
        if (Sessions.Count == 0)
            return;
        if (faults.Draw(FaultKind.DelayedEvent))
        {
            _ = LaterAsync(e);
            return;
        }
        if (held is null && e.ChannelId is not null && faults.Draw(FaultKind.ReorderedEvents))
        {
            held = e;
            _ = ReleaseAsync(e);
            return;
        }
        Deliver(e);
        if (held is { } waiting && waiting.ChannelId != e.ChannelId)
        {
            held = null;
            Deliver(waiting);
        }
    }

    /// <summary>Counts an identify; false when it comes too soon after the last one.</summary>
    public bool MayIdentify()
    {
        var soon = lastIdentify is { } last && Realm.Now - last < Realm.Options.IdentifyInterval;
        lastIdentify = Realm.Now;
        Identifies++;
        return !soon;
    }

    /// <summary>Ends a session: it can no longer be resumed.</summary>
    public void Forget(Session session) => Sessions.Remove(session);

    private void Deliver(GatewayEvent e)
    {
        foreach (var session in Sessions.ToArray())
        {
            if (session.Hears(e))
                Deliver(session, e);
        }
    }

    private void Deliver(Session session, GatewayEvent e)
    {
        var data = e.Message is { } m && !session.Intents.HasBit(Intents.MessageContent) && !Blanking.Readable(m, Realm.Bot) ? Blanking.Blank(e.Data) : e.Data;
        if (faults.Draw(FaultKind.UnknownEvent))
            session.Deliver("SOMETHING_NEW", new JsonObject { ["id"] = Realm.Ids.Next().Text(), ["odd"] = new JsonArray(1, null, "x") });
        data = faults.Disfigure(data);
        session.Deliver(e.Name, data);
        if (faults.Draw(FaultKind.DuplicatedEvent))
            session.Deliver(e.Name, data);
        GatewayFaults.AfterEvent(this, session, faults);
    }

    private async Task LaterAsync(GatewayEvent e)
    {
        await Task.Delay(faults.Delay).ConfigureAwait(false);
        lock (Realm.Gate)
            Deliver(e);
    }

    private async Task ReleaseAsync(GatewayEvent e)
    {
        // Nothing else may happen for a while; an event held back must still come.
        await Task.Delay(faults.Delay).ConfigureAwait(false);
        lock (Realm.Gate)
        {
            if (held != e)
                return;
            held = null;
            Deliver(e);
        }
    }
}
