using System.Globalization;
using System.Net.Http.Headers;

namespace ShedBot.Discord.Rest;

internal enum LimitScope
{
    /// <summary>This bot on this limit.</summary>
    User,

    /// <summary>This bot on everything.</summary>
    Global,

    /// <summary>Everybody on this resource; not held against us.</summary>
    Shared,
}

/// <summary>The limit headers of an answer. What is missing or senseless is as good as not there.</summary>
/// <remarks>Source: the platform's description, topics/rate-limits, "Header Format".</remarks>
internal static class RateHeaders
{
    // Nothing sensible lasts longer, and no wait of ours comes near it.
    private static readonly TimeSpan Longest = TimeSpan.FromDays(1);

    // For a 429 that does not say how long. Our own choice.
    private static readonly TimeSpan Unsaid = TimeSpan.FromSeconds(5);

    public static Reading Read(HttpResponseHeaders headers)
    {
        var bucket = One(headers, "X-RateLimit-Bucket");
        return Whole(One(headers, "X-RateLimit-Limit")) is > 0 and { } limit
            && Whole(One(headers, "X-RateLimit-Remaining")) is >= 0 and { } remaining
            && Seconds(One(headers, "X-RateLimit-Reset-After")) is { } resetAfter
                ? new Reading(bucket, limit, remaining, resetAfter)
                : new Reading(bucket, 0, 0, default);
    }

    /// <summary>What a 429 is about. A page of a machine in between, without any of the platform's own words, concerns our whole address.</summary>
    public static LimitScope Scope(HttpResponseHeaders headers, Refusal refusal) => One(headers, "X-RateLimit-Scope")?.ToUpperInvariant() switch
    {
        "SHARED" => LimitScope.Shared,
        "GLOBAL" => LimitScope.Global,
        _ when refusal.Global || headers.Contains("X-RateLimit-Global") => LimitScope.Global,
        null when !refusal.IsJson && One(headers, "X-RateLimit-Bucket") is null => LimitScope.Global,
        _ => LimitScope.User,
    };

    /// <summary>How long a 429 bids us wait: the body's figure is the finer one.</summary>
    public static TimeSpan Wait(HttpResponseHeaders headers, Refusal refusal) =>
        refusal.RetryAfter ?? Seconds(One(headers, "Retry-After")) ?? Seconds(One(headers, "X-RateLimit-Reset-After")) ?? Unsaid;

    public static TimeSpan? Seconds(double seconds) =>
        !double.IsFinite(seconds) || seconds < 0 ? null : seconds >= Longest.TotalSeconds ? Longest : TimeSpan.FromSeconds(seconds);

    private static TimeSpan? Seconds(string? text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) ? Seconds(seconds) : null;

    private static int? Whole(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : null;

    private static string? One(HttpResponseHeaders headers, string name) =>
        headers.TryGetValues(name, out var values) ? values.FirstOrDefault() : null;
}
