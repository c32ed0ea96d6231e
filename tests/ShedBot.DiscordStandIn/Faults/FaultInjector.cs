using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Faults;

/// <summary>Makes things go wrong, on demand or by a seeded plan, and counts what did. Safe to call at any time.</summary>
public sealed class FaultInjector
{
    private readonly Lock gate = new();
    private readonly List<(FaultKind Kind, string? Route)> armed = [];
    private readonly List<(string Route, Refusal Why)> refusals = [];
    private readonly Dictionary<FaultKind, int> injected = [];
    private Dictionary<FaultKind, double> rates = [];
    private Random chance = new(0);

    /// <summary>How late a delayed event or a slow answer is.</summary>
    public TimeSpan Delay { get; set; } = TimeSpan.FromMilliseconds(300);

    /// <summary>What an injected 429 asks the client to wait.</summary>
    public TimeSpan RetryAfter { get; set; } = TimeSpan.FromMilliseconds(400);

    /// <summary>While set, no heartbeat is acknowledged.</summary>
    public bool SwallowAcks { get; set; }

    /// <summary>How often each kind was injected.</summary>
    public IReadOnlyDictionary<FaultKind, int> Injected
    {
        get
        {
            lock (gate)
                return new Dictionary<FaultKind, int>(injected);
        }
    }

    /// <summary>Arms a fault for the next opportunities.</summary>
    /// <param name="route">Method and template, such as <c>POST /channels/{channel_id}/messages</c>; null for any. Only REST faults look at it.</param>
    public void Next(FaultKind kind, string? route = null, int times = 1)
    {
        lock (gate)
            armed.AddRange(Enumerable.Repeat((kind, route), times));
    }

    /// <summary>Refuses the next requests of a route with a code of the platform, carrying nothing out.</summary>
    public void RefuseNext(string route, int status, int code, string message = "Refused by the stand-in", int times = 1)
    {
        lock (gate)
            refusals.AddRange(Enumerable.Repeat((route, new Refusal(status, code, message)), times));
    }

    /// <summary>From now on each opportunity of a kind is taken with its rate, 0 to 1. The same seed and opportunities give the same faults.</summary>
    public void Plan(int seed, IReadOnlyDictionary<FaultKind, double> perOpportunity)
    {
        lock (gate)
        {
            chance = new Random(seed);
            rates = new(perOpportunity);
        }
    }

    /// <summary>Ends the plan and disarms what has not happened yet; the counts stay.</summary>
    public void Stop()
    {
        lock (gate)
        {
            rates = [];
            armed.Clear();
            refusals.Clear();
        }
        SwallowAcks = false;
    }

    internal bool Draw(FaultKind kind, string? route = null)
    {
        lock (gate)
        {
            var at = armed.FindIndex(a => a.Kind == kind && (a.Route is null || a.Route == route));
            if (at >= 0)
                armed.RemoveAt(at);
            else if (!rates.TryGetValue(kind, out var rate) || chance.NextDouble() >= rate)
                return false;
            Count(kind);
            return true;
        }
    }

    internal void Count(FaultKind kind)
    {
        lock (gate)
            injected[kind] = injected.GetValueOrDefault(kind) + 1;
    }

    internal Refusal? Refused(string route)
    {
        lock (gate)
        {
            var at = refusals.FindIndex(r => r.Route == route);
            if (at < 0)
                return null;
            var why = refusals[at].Why;
            refusals.RemoveAt(at);
            return why;
        }
    }

    /// <summary>The same object, or a copy with nulls and unheard-of fields where a tolerant reader must not mind.</summary>
    internal JsonObject Disfigure(JsonObject data)
    {
        var nulls = Draw(FaultKind.NullFields);
        var unknown = Draw(FaultKind.UnknownFields);
        if (!nulls && !unknown)
            return data;
        var copy = (JsonObject)data.DeepClone();
        lock (gate)
            Disfigurement.Apply(copy, nulls ? chance : null, unknown);
        return copy;
    }
}
