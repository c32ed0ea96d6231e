using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.Faults;

/// <summary>Puts null into fields the platform documents as optional or nullable, and adds fields nobody has heard of.</summary>
internal static class Disfigurement
{
    private static readonly string[] Optional =
    [
        "nonce", "webhook_id", "application_id", "message_reference", "referenced_message", "interaction_metadata", "thread",
        "nick", "avatar", "global_name", "banner", "accent_color", "last_message_id", "topic", "rate_limit_per_user",
        "applied_tags", "available_tags", "permission_overwrites", "locale", "guild_locale", "attachment_size_limit",
        "description", "width", "height", "entitlements", "authorizing_integration_owners", "context", "newly_created", "shard",
        "public_flags", "primary_guild", "member_count", "message_count", "total_message_sent", "preferred_locale", "channel_type",
    ];

    /// <param name="chance">Each optional field present becomes null every other time; null leaves them alone.</param>
    public static void Apply(JsonNode? at, Random? chance, bool unknown)
    {
        if (at is JsonArray list)
        {
            foreach (var item in list)
                Apply(item, chance, unknown);
        }
        if (at is not JsonObject part)
            return;
        foreach (var name in part.Select(p => p.Key).ToArray())
        {
            if (chance is not null && Array.IndexOf(Optional, name) >= 0 && chance.Next(2) == 0)
                part[name] = null;
            else
                Apply(part[name], chance, unknown);
        }
        if (unknown)
            part["zz_unheard_of"] = new JsonObject { ["type"] = 99, ["list"] = new JsonArray(1, null, "x") };
    }
}
