namespace ShedBot.Discord.Rest;

/// <param name="ResetAfter">Milliseconds.</param>
internal sealed record SessionStarts(int? Remaining = null, long? ResetAfter = null, int? MaxConcurrency = null);

/// <summary>Where the gateway is, as the platform says it. Source: its description, events/gateway, "Get Gateway Bot".</summary>
internal sealed record GatewayAnswer(string? Url = null, int? Shards = null, SessionStarts? SessionStartLimit = null)
{
    /// <returns>Null when there is no usable address in it.</returns>
    public GatewayInfo? Read() => Uri.TryCreate(Url, UriKind.Absolute, out var url) && url?.Scheme is "wss" or "ws"
        ? new GatewayInfo(
            url,
            Math.Max(1, Shards ?? 1),
            Math.Max(0, SessionStartLimit?.Remaining ?? 1),
            TimeSpan.FromMilliseconds(Math.Max(0, SessionStartLimit?.ResetAfter ?? 0)),
            Math.Max(1, SessionStartLimit?.MaxConcurrency ?? 1))
        : null;
}
