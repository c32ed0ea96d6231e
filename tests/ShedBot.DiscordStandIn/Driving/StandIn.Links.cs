using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.Gateway;

namespace ShedBot.DiscordStandIn;

// What happens to sockets, on demand and at once.
public sealed partial class StandIn
{
    /// <summary>Does a socket fault to every open socket now: dropped, half a frame, op 7, op 9 true or false. Gives how many sockets it met.</summary>
    public int Strike(FaultKind kind)
    {
        lock (realm.Gate)
        {
            var met = realm.Hub.Connections.ToArray();
            foreach (var connection in met)
            {
                GatewayFaults.Befall(realm.Hub, connection, kind);
                Faults.Count(kind);
            }
            return met.Length;
        }
    }

    /// <summary>Closes every open socket with a code. A code that ends sessions on the platform (4003, 4004, 4007, 4009 to 4014) ends them here.</summary>
    public void CloseLinks(int code, string why = "closed by the stand-in")
    {
        lock (realm.Gate)
        {
            foreach (var connection in realm.Hub.Connections)
            {
                if ((code is 4003 or 4004 or 4007 or (>= 4009 and <= 4014)) && connection.Session is { } session)
                    realm.Hub.Forget(session);
                connection.Close(code, why);
            }
        }
    }

    /// <summary>Asks every client for a heartbeat at once (op 1).</summary>
    public void AskForBeats()
    {
        lock (realm.Gate)
        {
            foreach (var connection in realm.Hub.Connections)
                connection.Send("""{"t":null,"s":null,"op":1,"d":null}""");
        }
    }

    /// <summary>Ends every session, as when the platform forgot them: the next resume gets op 9 false.</summary>
    public void ForgetSessions()
    {
        lock (realm.Gate)
            realm.Hub.Sessions.Clear();
    }

    /// <summary>Tells every session an event of the test's own making.</summary>
    public void Dispatch(string name, string dataJson)
    {
        lock (realm.Gate)
        {
            var data = (System.Text.Json.Nodes.JsonObject)System.Text.Json.Nodes.JsonNode.Parse(dataJson)!;
            realm.Hub.Dispatch(new GatewayEvent(name, Intents.None, data, null, null, null));
        }
    }
}
