using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Rest;

/// <summary>The requests that ShedBot makes. Each waits for its turn under the platform's limits and is sent again only where that cannot do a thing twice.</summary>
/// <remarks>All throw <see cref="DiscordException"/> when the platform refuses, and when it could not be reached after the tries that are safe.</remarks>
internal interface IDiscordRest
{
    Task<User> GetMeAsync(CancellationToken ct);

    Task<GatewayInfo> GetGatewayAsync(CancellationToken ct);

    /// <summary>Sends a message. With a nonce it is sent again when no answer came, since the platform then gives back the first; without one it is not.</summary>
    Task<Message> PostMessageAsync(Snowflake channel, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct);

    Task<Message> EditMessageAsync(Snowflake channel, Snowflake message, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct);

    /// <summary>Takes a message away; done as well when it was gone already.</summary>
    Task DeleteMessageAsync(Snowflake channel, Snowflake message, CancellationToken ct);

    Task<Message> GetMessageAsync(Snowflake channel, Snowflake message, CancellationToken ct);

    /// <param name="after">Only messages after this one, oldest of them included; none: the newest.</param>
    /// <param name="limit">1 to <see cref="Limits.HistoryPage"/>.</param>
    /// <returns>Newest first.</returns>
    Task<IReadOnlyList<Message>> ListMessagesAsync(Snowflake channel, Snowflake after, int limit, CancellationToken ct);

    /// <summary>Hangs a thread on a message. When there is one already it is given back, so this is safe to repeat.</summary>
    Task<Channel> StartThreadFromMessageAsync(Snowflake channel, Snowflake message, ThreadBody body, CancellationToken ct);

    /// <summary>Starts a thread of its own, or a forum post. Never repeated by itself: look among the active threads first.</summary>
    Task<Channel> StartThreadAsync(Snowflake channel, ThreadBody body, CancellationToken ct);

    Task<Channel> GetChannelAsync(Snowflake channel, CancellationToken ct);

    Task<Channel> EditChannelAsync(Snowflake channel, ChannelEdit edit, CancellationToken ct);

    Task AddThreadMemberAsync(Snowflake thread, Snowflake user, CancellationToken ct);

    Task<IReadOnlyList<Channel>> ActiveThreadsAsync(Snowflake guild, CancellationToken ct);

    Task<IReadOnlyList<Role>> ListRolesAsync(Snowflake guild, CancellationToken ct);

    Task<GuildMember> GetMemberAsync(Snowflake guild, Snowflake user, CancellationToken ct);

    /// <param name="guild">None: the commands of all clubs.</param>
    Task<IReadOnlyList<Command>> ListCommandsAsync(Snowflake application, Snowflake guild, CancellationToken ct);

    /// <summary>Replaces all commands of all clubs, or of one.</summary>
    Task<IReadOnlyList<Command>> PutCommandsAsync(Snowflake application, Snowflake guild, IReadOnlyList<Command> commands, CancellationToken ct);

    /// <summary>Gives an interaction its first and only answer. Within the time that is left of the three seconds, or not at all.</summary>
    /// <returns>The message that it made or changed; null where it made none.</returns>
    Task<Message?> AnswerAsync(Interaction interaction, InteractionAnswer answer, IReadOnlyList<Upload> files, CancellationToken ct);

    /// <summary>Changes the first answer, or fills in a deferred one.</summary>
    Task<Message> EditAnswerAsync(Interaction interaction, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct);

    /// <summary>A further message to an interaction that was answered.</summary>
    Task<Message> FollowUpAsync(Interaction interaction, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct);

    /// <summary>The direct conversation with somebody; the same one each time.</summary>
    Task<Channel> OpenDmAsync(Snowflake user, CancellationToken ct);
}

/// <param name="Shards">The advised number of shards; 1 or more.</param>
/// <param name="Remaining">Sessions that may still be begun until <paramref name="ResetAfter"/> has passed.</param>
/// <param name="MaxConcurrency">Shards that may identify within the same five seconds; 1 or more.</param>
internal sealed record GatewayInfo(Uri Url, int Shards, int Remaining, TimeSpan ResetAfter, int MaxConcurrency);
