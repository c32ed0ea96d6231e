using System.Text.Json;

namespace ShedBot.Discord.Gateway;

/// <summary>The events that we make something of.</summary>
internal enum EventKind
{
    None,
    Other,
    Ready,
    Resumed,
    GuildCreate,
    GuildDelete,
    MessageCreate,
    MessageDelete,
    MessageDeleteBulk,
    InteractionCreate,
    ThreadCreate,
    ThreadUpdate,
    ThreadDelete,
    ChannelDelete,
}

internal static class EventKinds
{
    /// <summary>The name as it stands on the wire, for counting; no text is made for it.</summary>
    public static string Name(this EventKind kind) => kind switch
    {
        EventKind.Ready => "READY",
        EventKind.Resumed => "RESUMED",
        EventKind.GuildCreate => "GUILD_CREATE",
        EventKind.GuildDelete => "GUILD_DELETE",
        EventKind.MessageCreate => "MESSAGE_CREATE",
        EventKind.MessageDelete => "MESSAGE_DELETE",
        EventKind.MessageDeleteBulk => "MESSAGE_DELETE_BULK",
        EventKind.InteractionCreate => "INTERACTION_CREATE",
        EventKind.ThreadCreate => "THREAD_CREATE",
        EventKind.ThreadUpdate => "THREAD_UPDATE",
        EventKind.ThreadDelete => "THREAD_DELETE",
        EventKind.ChannelDelete => "CHANNEL_DELETE",
        _ => "other",
    };

    /// <summary>The most frequent first.</summary>
    public static EventKind Of(ref Utf8JsonReader name) =>
        name.ValueTextEquals("MESSAGE_CREATE"u8) ? EventKind.MessageCreate
        : name.ValueTextEquals("INTERACTION_CREATE"u8) ? EventKind.InteractionCreate
        : name.ValueTextEquals("MESSAGE_DELETE"u8) ? EventKind.MessageDelete
        : name.ValueTextEquals("THREAD_UPDATE"u8) ? EventKind.ThreadUpdate
        : name.ValueTextEquals("THREAD_CREATE"u8) ? EventKind.ThreadCreate
        : name.ValueTextEquals("GUILD_CREATE"u8) ? EventKind.GuildCreate
        : name.ValueTextEquals("GUILD_DELETE"u8) ? EventKind.GuildDelete
        : name.ValueTextEquals("MESSAGE_DELETE_BULK"u8) ? EventKind.MessageDeleteBulk
        : name.ValueTextEquals("THREAD_DELETE"u8) ? EventKind.ThreadDelete
        : name.ValueTextEquals("CHANNEL_DELETE"u8) ? EventKind.ChannelDelete
        : name.ValueTextEquals("READY"u8) ? EventKind.Ready
        : name.ValueTextEquals("RESUMED"u8) ? EventKind.Resumed
        : EventKind.Other;
}
