using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>The platform's JSON for a guild.</summary>
internal static class RenderGuild
{
    public static JsonObject Facts(Guild g) => new()
    {
        ["id"] = g.Id.Text(),
        ["name"] = g.Name,
        ["icon"] = null,
        ["description"] = null,
        ["home_header"] = null,
        ["splash"] = null,
        ["discovery_splash"] = null,
        ["features"] = new JsonArray(),
        ["banner"] = null,
        ["owner_id"] = g.Owner.Id.Text(),
        ["application_id"] = null,
        ["region"] = "deprecated",
        ["afk_channel_id"] = null,
        ["afk_timeout"] = 300,
        ["system_channel_id"] = null,
        ["system_channel_flags"] = 0,
        ["widget_enabled"] = false,
        ["widget_channel_id"] = null,
        ["verification_level"] = 0,
        ["roles"] = Render.Roles(g),
        ["default_message_notifications"] = 0,
        ["mfa_level"] = 0,
        ["explicit_content_filter"] = 0,
        ["max_presences"] = null,
        ["max_members"] = 500000,
        ["max_stage_video_channel_users"] = 50,
        ["max_video_channel_users"] = 25,
        ["vanity_url_code"] = null,
        ["premium_tier"] = 0,
        ["premium_subscription_count"] = 0,
        ["preferred_locale"] = g.PreferredLocale,
        ["rules_channel_id"] = null,
        ["safety_alerts_channel_id"] = null,
        ["public_updates_channel_id"] = null,
        ["premium_progress_bar_enabled"] = false,
        ["nsfw"] = false,
        ["nsfw_level"] = 0,
        ["emojis"] = new JsonArray(),
        ["stickers"] = new JsonArray(),
        ["incidents_data"] = null,
    };

    /// <summary>The guild as the gateway tells it: only what the bot may see, of members only the bot itself.</summary>
    public static JsonObject Created(Guild g, Person bot)
    {
        var guild = Facts(g);
        var seen = g.Channels.Where(c => !c.Deleted && RightsOf.In(c, bot).HasFlag(Rights.ViewChannel)).ToList();
        guild["unavailable"] = false;
        guild["large"] = g.Members.Count > 250;
        guild["joined_at"] = (g.Members.TryGetValue(bot.Id, out var own) ? own.JoinedAt : default).Text();
        guild["member_count"] = g.Members.Count;
        guild["members"] = own is null ? new JsonArray() : new JsonArray(Render.Member(own));
        guild["channels"] = Wire.ArrayOf(seen.Where(c => c.Thread is null).Select(RenderPlaces.Channel));
        guild["threads"] = Wire.ArrayOf(seen.Where(c => c.Thread is { Archived: false }).Select(RenderPlaces.Channel));
        foreach (var none in new[] { "voice_states", "presences", "stage_instances", "guild_scheduled_events", "soundboard_sounds" })
            guild[none] = new JsonArray();
        return guild;
    }

    public static JsonObject Unavailable(Guild g) => new() { ["id"] = g.Id.Text(), ["unavailable"] = true };
}
