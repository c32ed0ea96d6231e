using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>Makes an event of the inside of a frame.</summary>
internal static class EventReader
{
    /// <returns>Null when it lacks what one must have to deal with it.</returns>
    /// <exception cref="JsonException">A field is of another kind than it should be.</exception>
    public static GatewayEvent? Read(EventKind kind, ReadOnlySpan<byte> data, DateTimeOffset at)
    {
        switch (kind)
        {
            case EventKind.MessageCreate:
                return Of(data, WireJson.Default.Message) is { Id.IsNone: false } message ? new MessageCame(message) { At = at } : null;
            case EventKind.InteractionCreate:
                return Of(data, WireJson.Default.Interaction) is { Id.IsNone: false, Token: not null } interaction
                    ? new InteractionCame(interaction) { At = at }
                    : null;
            case EventKind.ThreadCreate or EventKind.ThreadUpdate:
                return Of(data, WireJson.Default.Channel) is { Id.IsNone: false } thread ? new ThreadChanged(thread) { At = at } : null;
            case EventKind.GuildCreate:
                return Of(data, WireJson.Default.Guild) is { Id.IsNone: false } guild ? new GuildThere(guild) { At = at } : null;
        }
        if (Of(data, GatewayJson.Default.GoneData) is not { } gone)
            return null;
        if (kind == EventKind.MessageDeleteBulk)
            return new MessageGone(gone.ChannelId, gone.Ids ?? []) { At = at };
        if (gone.Id.IsNone)
            return null;
        return kind switch
        {
            // Only what says 'unavailable' is an outage; without it the club has sent us away.
            EventKind.GuildDelete => new GuildGone(gone.Id, gone.Unavailable == true) { At = at },
            EventKind.ThreadDelete => new ThreadGone(gone.Id, gone.GuildId) { At = at },
            EventKind.ChannelDelete => new ChannelGone(gone.Id, gone.GuildId) { At = at },
            EventKind.MessageDelete => new MessageGone(gone.ChannelId, [gone.Id]) { At = at },
            _ => null,
        };
    }

    /// <summary>The session that a READY begins.</summary>
    /// <exception cref="JsonException">Without an id of its own and ours there is no session.</exception>
    public static Session ReadReady(ReadOnlySpan<byte> data, Uri home, long before)
    {
        if (Of(data, GatewayJson.Default.ReadyData) is not { SessionId.Length: > 0, User.Id.IsNone: false } ready)
            throw new JsonException("A session began without its id or without ours.");
        // The token goes there: never by a less private way than the first.
        var resume = Uri.TryCreate(ready.ResumeGatewayUrl, UriKind.Absolute, out var told) && told.Scheme == home.Scheme ? told : home;
        var guilds = (ready.Guilds ?? []).Where(g => g is { Id.IsNone: false }).Select(g => g!.Id);
        return new Session(ready.SessionId, resume, ready.User, ready.Application?.Id ?? default, guilds, before);
    }

    private static T? Of<T>(ReadOnlySpan<byte> data, JsonTypeInfo<T> type)
        where T : class => data.IsEmpty ? null : JsonSerializer.Deserialize(data, type);
}
