using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>Something that happened on the platform and that we asked to hear of.</summary>
internal abstract record GatewayEvent
{
    /// <summary>When it came in, by our clock.</summary>
    public DateTimeOffset At { get; init; }
}

/// <summary>A session has begun. What happened since the last one was not told.</summary>
/// <param name="Guilds">The clubs that this shard looks after.</param>
/// <param name="Shards">Into how many the clubs are divided.</param>
/// <param name="Fresh">False when the session was resumed and everything missed has been told again.</param>
internal sealed record Ready(User Me, Snowflake Application, IReadOnlyList<Snowflake> Guilds, int Shard, int Shards, bool Fresh = true) : GatewayEvent;

/// <summary>A club is there: after the start, after an outage, or because it has just taken us in.</summary>
internal sealed record GuildThere(Guild Guild) : GatewayEvent;

/// <param name="Outage">True when it is only out of reach; false when it has sent us away.</param>
internal sealed record GuildGone(Snowflake Guild, bool Outage) : GatewayEvent;

internal sealed record MessageCame(Message Message) : GatewayEvent;

internal sealed record InteractionCame(Interaction Interaction) : GatewayEvent;

/// <summary>A thread was made, renamed, archived, locked or opened again.</summary>
internal sealed record ThreadChanged(Channel Thread) : GatewayEvent;

internal sealed record ThreadGone(Snowflake Thread, Snowflake Guild) : GatewayEvent;

internal sealed record ChannelGone(Snowflake Channel, Snowflake Guild) : GatewayEvent;

internal sealed record MessageGone(Snowflake Channel, IReadOnlyList<Snowflake> Messages) : GatewayEvent;

/// <summary>The first look at a message, before anything is made of it: most messages are not for us.</summary>
internal readonly record struct MessagePeek(
    Snowflake Id, Snowflake Channel, Snowflake Guild, Snowflake Author, bool FromBot, bool MentionsUs)
{
    /// <summary>Whether it could be dealt with: it has an id and a channel.</summary>
    public bool IsMessage => !Id.IsNone && !Channel.IsNone;
}

/// <summary>Says which messages are worth reading; asked on the reading thread, for every message, so it must be quick and hold no lock.</summary>
internal interface IMessageInterest
{
    bool Wants(in MessagePeek message);
}

/// <summary>Takes events, in the order in which they came. Called on the reading thread: it only puts them in a queue.</summary>
internal interface IEventSink
{
    /// <param name="done">To be called once when the event has been dealt with and need not come again.</param>
    void Take(GatewayEvent happened, Action done);
}
