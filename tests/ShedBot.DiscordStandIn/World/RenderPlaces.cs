using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>The platform's JSON for channels and threads.</summary>
internal static class RenderPlaces
{
    public static JsonObject Channel(Channel c) => c switch
    {
        { Thread: not null } => Thread(c),
        { Guild: null } => Direct(c),
        _ => InGuild(c),
    };

    private static JsonObject Direct(Channel c) => new()
    {
        ["id"] = c.Id.Text(),
        ["type"] = (int)c.Kind,
        ["flags"] = c.Flags,
        ["last_message_id"] = LastMessage(c),
        ["recipients"] = new JsonArray(Render.User(c.Recipient!)),
    };

    private static JsonObject InGuild(Channel c)
    {
        var channel = new JsonObject
        {
            ["id"] = c.Id.Text(),
            ["type"] = (int)c.Kind,
            ["guild_id"] = c.Guild!.Id.Text(),
            ["name"] = c.Name,
            ["position"] = c.Guild.Channels.IndexOf(c),
            ["parent_id"] = c.Parent?.Id.Text(),
            ["topic"] = null,
            ["nsfw"] = false,
            ["flags"] = c.Flags,
            ["last_message_id"] = LastMessage(c),
            ["rate_limit_per_user"] = 0,
            ["permission_overwrites"] = Wire.ArrayOf(c.Overwrites.Select(Overwrite)),
        };
        if (c.Kind == ChannelKind.Forum)
        {
            channel["available_tags"] = Wire.ArrayOf(c.Tags.Select(Tag));
            channel["default_reaction_emoji"] = null;
            channel["default_sort_order"] = null;
            channel["default_forum_layout"] = 0;
        }
        return channel;
    }

    public static JsonObject Thread(Channel c)
    {
        var state = c.Thread!;
        var thread = new JsonObject
        {
            ["id"] = c.Id.Text(),
            ["type"] = (int)c.Kind,
            ["guild_id"] = c.Guild!.Id.Text(),
            ["parent_id"] = c.Parent!.Id.Text(),
            ["owner_id"] = state.Owner.Id.Text(),
            ["name"] = c.Name,
            ["flags"] = c.Flags,
            ["last_message_id"] = LastMessage(c),
            ["rate_limit_per_user"] = state.SlowSeconds,
            ["message_count"] = state.TotalSent,
            ["total_message_sent"] = state.TotalSent,
            // The platform stops counting members at 50.
            ["member_count"] = Math.Min(50, state.Members.Count),
            ["thread_metadata"] = new JsonObject
            {
                ["archived"] = state.Archived,
                ["archive_timestamp"] = state.ArchiveChangedAt.Text(),
                ["auto_archive_duration"] = state.AutoArchiveMinutes,
                ["locked"] = state.Locked,
                ["create_timestamp"] = state.CreatedAt.Text(),
            },
        };
        if (c.Kind == ChannelKind.PrivateThread)
            thread["thread_metadata"]!["invitable"] = state.Invitable;
        if (c.Parent.Kind == ChannelKind.Forum)
            thread["applied_tags"] = Wire.ArrayOf(state.AppliedTags);
        return thread;
    }

    public static JsonObject ThreadMember(Channel thread, ulong personId) => new()
    {
        ["id"] = thread.Id.Text(),
        ["user_id"] = personId.Text(),
        ["join_timestamp"] = thread.Thread!.Members[personId].Text(),
        ["flags"] = 0,
    };

    /// <summary>A channel as interactions carry it, with the invoker's rights in it.</summary>
    public static JsonObject Partial(Channel c, Person forWhom)
    {
        var channel = Channel(c);
        channel["permissions"] = RightsOf.In(c, forWhom).Bits();
        return channel;
    }

    public static JsonObject Gone(Channel c)
    {
        var gone = new JsonObject { ["id"] = c.Id.Text(), ["guild_id"] = c.Guild!.Id.Text(), ["parent_id"] = c.Parent?.Id.Text(), ["type"] = (int)c.Kind };
        return gone;
    }

    private static string? LastMessage(Channel c) => c.Messages.LastOrDefault(m => !m.Ephemeral)?.Id.Text();

    private static JsonObject Overwrite(Overwrite o) => new()
    {
        ["id"] = o.TargetId.Text(),
        ["type"] = o.IsPerson ? 1 : 0,
        ["allow"] = o.Allow.Bits(),
        ["deny"] = o.Deny.Bits(),
    };

    private static JsonObject Tag(ForumTag t) => new()
    {
        ["id"] = t.Id.Text(),
        ["name"] = t.Name,
        ["moderated"] = t.Moderated,
        ["emoji_id"] = null,
        ["emoji_name"] = null,
    };
}
