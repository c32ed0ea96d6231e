using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Who a message may call. Source: the platform's message reference, "Allowed mentions"; that ours always says whom, and never
/// lets whole kinds through, is our own rule: nobody is called by accident.</summary>
internal static class MentionRules
{
    private static readonly string[] Kinds = ["users", "roles", "everyone"];

    public static IEnumerable<string> Of(Message message)
    {
        var at = $"{message.At}allowed_mentions";
        if (message.Body.Field("allowed_mentions") is not { } allowed)
        {
            if (message.Ours && message.Speaks) yield return $"{at}: must say whom the message may call";
            yield break;
        }

        var parsed = allowed.Items("parse").Select(kind => kind.ValueKind is JsonValueKind.String ? kind.GetString()! : "?").ToList();
        foreach (var unknown in parsed.Except(Kinds)) yield return $"{at}.parse: no kind is called '{unknown}'";
        foreach (var kind in parsed.Where(kind => allowed.Items(kind).Count > 0)) yield return $"{at}.{kind}: not beside the same kind in parse";
        foreach (var reason in Bounds.Count(allowed, "users", 0, 100, $"{at}.").Concat(Bounds.Count(allowed, "roles", 0, 100, $"{at}."))) yield return reason;
        if (message.Ours && (parsed.Count > 0 || allowed.Field("parse") is null)) yield return $"{at}.parse: ours is always written and empty";
    }
}
