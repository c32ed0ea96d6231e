using ShedBot.DiscordStandIn.Gateway;

namespace ShedBot.DiscordStandIn.Faults;

/// <summary>What befalls a session's socket. Call under the realm's lock.</summary>
internal static class GatewayFaults
{
    private static readonly FaultKind[] OfSockets =
        [FaultKind.DroppedSocket, FaultKind.HalfFrame, FaultKind.Reconnect, FaultKind.InvalidSessionKept, FaultKind.InvalidSessionLost];

    public static void AfterEvent(Hub hub, Session session, FaultInjector faults)
    {
        if (session.Connection is not { } connection)
            return;
        foreach (var kind in OfSockets)
        {
            if (!faults.Draw(kind))
                continue;
            Befall(hub, connection, kind);
            return;
        }
    }

    /// <summary>Does one of the socket faults now.</summary>
    public static void Befall(Hub hub, Connection connection, FaultKind kind)
    {
        switch (kind)
        {
            case FaultKind.DroppedSocket:
                connection.Do(new Outgoing.Drop());
                break;
            case FaultKind.HalfFrame:
                connection.Do(new Outgoing.HalfThenDrop(Session.Frame("MESSAGE_CREATE", "{\"content\":\"half of this is never told\"}", 1)));
                break;
            case FaultKind.Reconnect:
                connection.Send("""{"t":null,"s":null,"op":7,"d":null}""");
                _ = CloseLaterAsync(hub, connection);
                break;
            case FaultKind.InvalidSessionKept:
                Part(hub, connection, forget: false);
                connection.Send("""{"t":null,"s":null,"op":9,"d":true}""");
                break;
            case FaultKind.InvalidSessionLost:
                Part(hub, connection, forget: true);
                connection.Send("""{"t":null,"s":null,"op":9,"d":false}""");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a fault that befalls a socket.");
        }
    }

    private static void Part(Hub hub, Connection connection, bool forget)
    {
        // The same socket may resume or identify again afterwards; clients differ in whether they do.
        connection.Identified = false;
        if (connection.Session is not { } session)
            return;
        connection.Session = null;
        session.Detach(connection, hub.Realm.Now);
        if (forget)
            hub.Forget(session);
    }

    private static async Task CloseLaterAsync(Hub hub, Connection connection)
    {
        await Task.Delay(hub.Realm.Options.ReconnectGrace).ConfigureAwait(false);
        lock (hub.Realm.Gate)
        {
            if (hub.Connections.Contains(connection) && connection.Report.ClosedByUs is null)
                connection.Close(4000, "Asked to reconnect");
        }
    }
}
