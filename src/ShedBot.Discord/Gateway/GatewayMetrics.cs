using System.Diagnostics.Metrics;

namespace ShedBot.Discord.Gateway;

/// <summary>What the gateway counts. No ids and no words in it.</summary>
internal static class GatewayMetrics
{
    public const string MeterName = "ShedBot.Discord";

    private static readonly Meter Meter = new(MeterName);
    private static readonly Counter<long> Events = Meter.CreateCounter<long>("shedbot.gateway.events", "{event}", "Events that came in, by type");
    private static readonly Counter<long> Ends = Meter.CreateCounter<long>("shedbot.gateway.reconnects", "{connection}", "Connections that ended, by reason");
    private static readonly Counter<long> Starts = Meter.CreateCounter<long>("shedbot.gateway.starts", "{session}", "Sessions asked for, by how");
    private static readonly Counter<long> Sends = Meter.CreateCounter<long>("shedbot.gateway.sends", "{payload}", "What we sent, by kind");

    public static Histogram<double> Latency { get; } = Meter.CreateHistogram<double>("shedbot.gateway.heartbeat", "s", "From a beat to its answer");

    public static void Event(EventKind kind) => Events.Add(1, new KeyValuePair<string, object?>("type", kind.Name()));

    public static void Ended(string reason) => Ends.Add(1, new KeyValuePair<string, object?>("reason", reason));

    public static void Started(bool resumed) => Starts.Add(1, new KeyValuePair<string, object?>("how", resumed ? "resume" : "identify"));

    public static void Sent(int op) => Sends.Add(1, new KeyValuePair<string, object?>("kind", op switch
    {
        Ops.Heartbeat => "heartbeat",
        Ops.Identify => "identify",
        Ops.Resume => "resume",
        _ => "other",
    }));
}
