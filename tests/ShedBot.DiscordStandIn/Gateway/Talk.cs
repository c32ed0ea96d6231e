using System.Text;
using System.Text.Json;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>The platform's side of one socket: what it says to what the client says.</summary>
internal sealed class Talk(Realm realm, FaultInjector faults, Connection connection, Action<string> violate)
{
    private const int MostBytes = 4096, MostSends = 120;
    private static readonly TimeSpan SendWindow = TimeSpan.FromSeconds(60);

    /// <summary>Greets. Under the realm's lock.</summary>
    public void Begin(Dictionary<string, string> query)
    {
        connection.LastBeat = realm.Now;
        if (query.GetValueOrDefault("v") is not ("9" or "10"))
        {
            connection.Close(4012, "Invalid API version");
            return;
        }
        if (query.GetValueOrDefault("encoding", "json") != "json")
        {
            Refuse(4002, "Only JSON is spoken here");
            return;
        }
        if (faults.Draw(FaultKind.ReconnectBeforeHello))
            connection.Send("""{"t":null,"s":null,"op":7,"d":null}""");
        connection.Send($$$"""{"t":null,"s":null,"op":10,"d":{"heartbeat_interval":{{{(int)realm.Options.HeartbeatInterval.TotalMilliseconds}}},"_trace":["stand-in"]}}""");
    }

    /// <summary>One message of the client.</summary>
    public void Hear(string text)
    {
        lock (realm.Gate)
        {
            if (connection.Report.ClosedByUs is not null || !Counted(text))
                return;
            try
            {
                using var parsed = JsonDocument.Parse(text);
                Take(parsed.RootElement);
            }
            catch (JsonException)
            {
                Refuse(4002, "Error while decoding payload.");
            }
        }
    }

    /// <summary>Ends sockets that stopped beating.</summary>
    public void Watch()
    {
        lock (realm.Gate)
        {
            if (connection.Report.ClosedByUs is null && realm.Now - connection.LastBeat > realm.Options.HeartbeatInterval * 2.5)
                connection.Close(4009, "Session timed out");
        }
    }

    /// <summary>The link is gone. Under the realm's lock.</summary>
    public void End()
    {
        if (connection.Session is not { } session)
            return;
        session.Detach(connection, realm.Now);
        // A client that says goodbye with 1000 or 1001 ends its session.
        if (connection.Report is { ClosedByClient: 1000 or 1001, ClosedByUs: null })
            realm.Hub.Forget(session);
    }

    private bool Counted(string text)
    {
        var bytes = Encoding.UTF8.GetByteCount(text);
        connection.Report.Sends++;
        connection.Report.LargestSend = Math.Max(connection.Report.LargestSend, bytes);
        if (bytes > MostBytes)
        {
            Refuse(4002, "Payload too large");
            return false;
        }
        connection.Sends.Enqueue(realm.Now);
        while (connection.Sends.Peek() < realm.Now - SendWindow)
            connection.Sends.Dequeue();
        if (connection.Sends.Count <= MostSends)
            return true;
        Refuse(4008, "You are being rate limited.");
        return false;
    }

    private void Take(JsonElement frame)
    {
        var op = frame.Of("op").AsNumber();
        var data = frame.Of("d");
        switch (op)
        {
            case 1:
                Beat();
                break;
            case 2:
                new Login(realm, faults, connection).Identify(data, Refuse);
                break;
            case 6:
                new Login(realm, faults, connection).Resume(data, Refuse);
                break;
            case 3 or 4 or 8 or 31 or 43:
                if (connection.Session is null)
                    Refuse(4003, "Not authenticated.");
                break;
            default:
                Refuse(4001, "Unknown opcode");
                break;
        }
    }

    private void Beat()
    {
        connection.LastBeat = realm.Now;
        connection.Report.BeatList.Enqueue(realm.Now);
        if (!faults.SwallowAcks && !faults.Draw(FaultKind.SwallowedAck))
            connection.Send("""{"t":null,"s":null,"op":11,"d":null}""");
        realm.Changed();
    }

    /// <summary>Closes over a fault of the client, and remembers it as one where the client's code alone is to blame.</summary>
    private void Refuse(int code, string why)
    {
        if (code is 4001 or 4002 or 4003 or 4005 or 4008 or 4010 or 4013)
            violate($"gateway: closed with {code}: {why}");
        connection.Close(code, why);
    }
}
