namespace ShedBot.Discord.Wire;

// What comes in is read tolerantly: every field that is not an id may be missing or null, and what is not named here is passed over.

internal sealed record User(Snowflake Id, string? Username = null, string? GlobalName = null, bool? Bot = null)
{
    public bool IsBot => Bot == true;
}

internal sealed record GuildMember(User? User = null, string? Nick = null, IReadOnlyList<Snowflake>? Roles = null, string? Permissions = null);

internal sealed record Role(Snowflake Id, string? Name = null, string? Permissions = null);

internal sealed record Overwrite(Snowflake Id, int Type, string? Allow = null, string? Deny = null);

internal sealed record ThreadMetadata(bool Archived = false, bool Locked = false, int? AutoArchiveDuration = null);

internal sealed record ForumTag(Snowflake Id, string? Name = null, bool Moderated = false);

/// <summary>A channel or a thread; often only in part.</summary>
internal sealed record Channel(
    Snowflake Id,
    int Type = 0,
    Snowflake GuildId = default,
    string? Name = null,
    Snowflake ParentId = default,
    Snowflake OwnerId = default,
    int? Flags = null,
    ThreadMetadata? ThreadMetadata = null,
    IReadOnlyList<ForumTag>? AvailableTags = null,
    IReadOnlyList<Overwrite>? PermissionOverwrites = null,
    string? Permissions = null,
    bool? NewlyCreated = null,
    Message? Message = null)
{
    /// <summary>A forum that takes only posts with a tag.</summary>
    public const int RequireTagFlag = 16;
}

internal sealed record Guild(
    Snowflake Id,
    string? Name = null,
    bool? Unavailable = null,
    Snowflake OwnerId = default,
    IReadOnlyList<Role>? Roles = null,
    IReadOnlyList<Channel>? Channels = null,
    IReadOnlyList<Channel>? Threads = null);

internal sealed record Application(Snowflake Id, string? Name = null);

internal sealed record ThreadList(IReadOnlyList<Channel>? Threads = null);

internal sealed record ThreadBody(
    string Name,
    int? Type = null,
    int? AutoArchiveDuration = null,
    bool? Invitable = null,
    IReadOnlyList<Snowflake>? AppliedTags = null,
    MessageBody? Message = null);

internal sealed record ChannelEdit(string? Name = null, bool? Archived = null, bool? Locked = null);

internal sealed record DmBody(Snowflake RecipientId);
