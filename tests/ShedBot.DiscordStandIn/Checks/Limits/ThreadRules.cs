using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Beginning and changing a thread. Source: the platform's channel reference and its page on threads; that ours always states the
/// kind is our own rule, because a thread without one is private; that only a private one says who may invite is ours too, another client
/// says it of every thread.</summary>
internal static class ThreadRules
{
    private const long PrivateThread = 12;

    /// <summary>A thread begun on a message.</summary>
    public static IEnumerable<string> OnMessage(JsonElement body) => [.. Bounds.Needed(body, "name", 1, 100, ""), .. Settings(body)];

    /// <summary>A thread begun alone, or a forum post when it brings a message.</summary>
    public static IEnumerable<string> Alone(JsonElement body, IReadOnlyList<CheckedPart> parts, bool ours) =>
    [
        .. OnMessage(body),
        .. body.Field("message") is { } first
            ? [.. MessageRules.Of(new Message(first, Sending.ForumStart, parts, ours, "message.")), .. Bounds.Count(body, "applied_tags", 0, 5, "")]
            : KindOf(body, ours),
    ];

    public static IEnumerable<string> Change(JsonElement body) =>
        [.. Bounds.Length(body, "name", 1, 100, ""), .. Settings(body), .. Bounds.Count(body, "applied_tags", 0, 5, "")];

    private static IEnumerable<string> Settings(JsonElement body)
    {
        if (body.Field("auto_archive_duration") is not null && body.Whole("auto_archive_duration") is not (60 or 1440 or 4320 or 10080))
            yield return "auto_archive_duration: 60, 1440, 4320 or 10080 minutes";
        foreach (var reason in Bounds.Range(body, "rate_limit_per_user", 0, 21600, "")) yield return reason;
    }

    private static IEnumerable<string> KindOf(JsonElement body, bool ours)
    {
        var type = body.Whole("type");
        if (type is null && ours) yield return "type: must be stated, or the thread is private";
        if (type is not (null or 10 or 11 or PrivateThread)) yield return $"type: a thread is 10, 11 or 12, not {type}";
        if (ours && body.Field("invitable") is not null && type is not (null or PrivateThread)) yield return "invitable: only a private thread has this";
    }
}
