using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>Counts requests per bucket and top resource, and over all routes. Call under the realm's lock.</summary>
internal sealed class Buckets(StandInOptions options)
{
    private readonly Dictionary<string, (DateTimeOffset Since, int Used)> used = [];
    private (DateTimeOffset Since, int Used) global;

    /// <summary>What a request found: how much is left, when the window ends, and which limit, if any, it ran into.</summary>
    public sealed record State(string Id, int Limit, int Left, TimeSpan ResetAfter, DateTimeOffset ResetAt, string? LimitedBy);

    public State Take(Route route, IReadOnlyDictionary<string, string> values, DateTimeOffset now)
    {
        var id = IdOf(route.Bucket);
        var key = $"{id}/{TopResource(values)}";
        var (since, count) = used.TryGetValue(key, out var found) && now - found.Since < options.BucketWindow ? found : (now, 0);
        count++;
        used[key] = (since, count);
        var reset = since + options.BucketWindow - now;
        var limitedBy = !route.OfInteraction && GloballyLimited(now) ? "global" : count > options.BucketLimit ? "user" : null;
        if (limitedBy == "global")
            reset = global.Since.AddSeconds(1) - now;
        return new State(id, options.BucketLimit, Math.Max(0, options.BucketLimit - count), reset, now + reset, limitedBy);
    }

    public static void Tell(State state, IHeaderDictionary headers)
    {
        headers["X-RateLimit-Limit"] = state.Limit.ToString(CultureInfo.InvariantCulture);
        headers["X-RateLimit-Remaining"] = state.Left.ToString(CultureInfo.InvariantCulture);
        headers["X-RateLimit-Reset"] = (state.ResetAt.ToUnixTimeMilliseconds() / 1000.0).ToString("F3", CultureInfo.InvariantCulture);
        headers["X-RateLimit-Reset-After"] = state.ResetAfter.TotalSeconds.ToString("F3", CultureInfo.InvariantCulture);
        headers["X-RateLimit-Bucket"] = state.Id;
    }

    private bool GloballyLimited(DateTimeOffset now)
    {
        if (options.GlobalLimit == 0)
            return false;
        if (now - global.Since >= TimeSpan.FromSeconds(1))
            global = (now, 0);
        global.Used++;
        return global.Used > options.GlobalLimit;
    }

    private static string TopResource(IReadOnlyDictionary<string, string> values) =>
        values.TryGetValue("channel_id", out var channel) ? channel
        : values.TryGetValue("guild_id", out var guild) ? guild
        : values.TryGetValue("webhook_id", out var hook) ? $"{hook}/{values.GetValueOrDefault("webhook_token")}"
        : "";

    // Opaque to clients; the same for a bucket in every run.
    private static string IdOf(string bucket)
    {
        ulong hash = 14695981039346656037;
        foreach (var b in Encoding.UTF8.GetBytes(bucket))
            hash = (hash ^ b) * 1099511628211;
        return hash.ToString("x16", CultureInfo.InvariantCulture);
    }
}
