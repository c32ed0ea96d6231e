using System.Text;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>What outlives a socket: who is listening for what, the count of events, and those kept for a replay.</summary>
internal sealed class Session(string id, long intents, int shard, int shards)
{
    private const int MostKept = 5000;
    private readonly Queue<(long Sequence, byte[] Frame)> kept = [];

    public string Id { get; } = id;

    public long Intents { get; } = intents;

    public int Shard { get; } = shard;

    public int Shards { get; } = shards;

    public long Sequence { get; private set; }

    public Connection? Connection { get; private set; }

    /// <summary>When the socket was lost; null while one is attached.</summary>
    public DateTimeOffset? AloneSince { get; private set; }

    public bool Hears(GatewayEvent e) =>
        (e.Intents == 0 || (e.Intents & Intents) != 0)
        && (e.GuildId is { } guild ? (int)((guild >> 22) % (ulong)Shards) : 0) == Shard;

    public void Attach(Connection connection)
    {
        Connection = connection;
        AloneSince = null;
    }

    public void Detach(Connection connection, DateTimeOffset now)
    {
        if (Connection != connection)
            return;
        Connection = null;
        AloneSince = now;
    }

    public void Deliver(string name, JsonNode? data)
    {
        var frame = Frame(name, data?.ToJsonString() ?? "null", ++Sequence);
        kept.Enqueue((Sequence, frame));
        if (kept.Count > MostKept)
            kept.Dequeue();
        Connection?.Send(frame);
    }

    /// <summary>Takes numbers for events that are not kept.</summary>
    public long Reserve(int count)
    {
        kept.Clear();
        var first = Sequence + 1;
        Sequence += count;
        return first;
    }

    /// <summary>Whether everything after that event is still here.</summary>
    public bool CanReplayFrom(long sequence) => sequence == Sequence || (kept.Count > 0 && kept.Peek().Sequence <= sequence + 1);

    public IEnumerable<byte[]> After(long sequence) => kept.Where(k => k.Sequence > sequence).Select(k => k.Frame);

    public static byte[] Frame(string name, string data, long sequence) =>
        Encoding.UTF8.GetBytes($"{{\"t\":\"{name}\",\"s\":{sequence},\"op\":0,\"d\":{data}}}");
}
