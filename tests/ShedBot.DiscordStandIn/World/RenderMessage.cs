using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>The platform's JSON for a message.</summary>
internal static class RenderMessage
{
    /// <summary>The message as REST answers it.</summary>
    public static JsonObject Message(Realm realm, Message m, bool nested = false)
    {
        var json = new JsonObject
        {
            ["id"] = m.Id.Text(),
            ["channel_id"] = m.Channel.Id.Text(),
            ["type"] = m.Type,
            ["author"] = Render.User(m.Author),
            ["content"] = m.Content,
            ["timestamp"] = Snowflakes.MadeAt(m.Id).Text(),
            ["edited_timestamp"] = m.EditedAt?.Text(),
            ["tts"] = false,
            ["mention_everyone"] = m.Pings.Everyone,
            ["mentions"] = Wire.ArrayOf(m.Pings.People.Where(realm.People.ContainsKey).Select(id => Render.User(realm.People[id]))),
            ["mention_roles"] = Wire.ArrayOf(m.Pings.Roles),
            ["attachments"] = Wire.ArrayOf(m.Attachments.Select(a => Attachments.Render(realm, m, a))),
            ["embeds"] = m.Embeds.DeepClone(),
            ["components"] = m.Components.DeepClone(),
            ["flags"] = m.Flags,
            ["pinned"] = m.Pinned,
        };
        if (m.Nonce is not null)
            json["nonce"] = m.Nonce.DeepClone();
        if (m.Answers is { } by)
        {
            json["application_id"] = realm.ApplicationId.Text();
            json["webhook_id"] = realm.ApplicationId.Text();
            json["interaction_metadata"] = by.Metadata();
        }
        else if (m.Author == realm.Bot)
        {
            json["application_id"] = realm.ApplicationId.Text();
        }
        if (m.StartedThread is { Deleted: false } thread)
            json["thread"] = RenderPlaces.Thread(thread);
        if (m.Reactions.Count > 0)
            json["reactions"] = Wire.ArrayOf(m.Reactions.Select(r => Reaction(realm, r.Key, r.Value)));
        if (m.Reference is { } about)
        {
            json["message_reference"] = new JsonObject
            {
                ["type"] = 0,
                ["message_id"] = about.Id.Text(),
                ["channel_id"] = about.Channel.Id.Text(),
                ["guild_id"] = about.Channel.Guild?.Id.Text(),
            };
            if (!nested)
                json["referenced_message"] = about.Deleted ? null : Message(realm, about, nested: true);
        }
        return json;
    }

    /// <summary>The message as the gateway tells it: with the guild, the author's membership and the kind of channel.</summary>
    public static JsonObject ForGateway(Realm realm, Message m)
    {
        var json = Message(realm, m);
        json["channel_type"] = (int)m.Channel.Kind;
        if (m.Channel.Guild is not { } guild)
            return json;
        json["guild_id"] = guild.Id.Text();
        if (m.Answers is null && guild.Members.TryGetValue(m.Author.Id, out var member))
            json["member"] = Render.MemberWithoutUser(member);
        return json;
    }

    private static JsonObject Reaction(Realm realm, string emoji, HashSet<ulong> who) => new()
    {
        ["count"] = who.Count,
        ["count_details"] = new JsonObject { ["burst"] = 0, ["normal"] = who.Count },
        ["me"] = who.Contains(realm.Bot.Id),
        ["me_burst"] = false,
        ["emoji"] = Emoji(emoji),
        ["burst_colors"] = new JsonArray(),
    };

    public static JsonObject Emoji(string emoji)
    {
        var parts = emoji.Split(':');
        return new JsonObject { ["id"] = parts.Length > 1 ? parts[1] : null, ["name"] = parts[0] };
    }
}
