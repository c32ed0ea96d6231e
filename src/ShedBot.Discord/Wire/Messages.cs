using System.Text.Json;

namespace ShedBot.Discord.Wire;

internal sealed record MessageReference(
    Snowflake MessageId = default, Snowflake ChannelId = default, Snowflake GuildId = default, bool? FailIfNotExists = null);

/// <summary>A message that came in, or that we sent as the platform gives it back.</summary>
/// <param name="Nonce">A text or a number, as its sender chose.</param>
internal sealed record Message(
    Snowflake Id,
    Snowflake ChannelId = default,
    Snowflake GuildId = default,
    User? Author = null,
    GuildMember? Member = null,
    string? Content = null,
    int Type = 0,
    int? Flags = null,
    IReadOnlyList<User>? Mentions = null,
    Snowflake WebhookId = default,
    MessageReference? MessageReference = null,
    Message? ReferencedMessage = null,
    IReadOnlyList<Component>? Components = null,
    IReadOnlyList<Attachment>? Attachments = null,
    JsonElement? Nonce = null);

/// <summary>A file of a message, or one that came with a command.</summary>
/// <param name="Size">In bytes, as we are told.</param>
/// <param name="Url">Where it can be fetched for a while.</param>
internal sealed record Attachment(Snowflake Id, string? Filename = null, string? Description = null, long? Size = null, string? Url = null);

/// <summary>A file to send along.</summary>
/// <param name="Name">ASCII, with its ending.</param>
internal sealed record Upload(string Name, string MediaType, ReadOnlyMemory<byte> Bytes);

internal sealed record AllowedMentions(
    IReadOnlyList<string> Parse, IReadOnlyList<Snowflake>? Users = null, IReadOnlyList<Snowflake>? Roles = null, bool? RepliedUser = null)
{
    public static AllowedMentions None { get; } = new([]);

    public static AllowedMentions User(Snowflake user) => new([], Users: [user]);

    public static AllowedMentions Role(Snowflake role) => new([], Roles: [role]);
}

/// <summary>A message to send, or what is to change in one that was sent.</summary>
internal sealed record MessageBody(
    string? Content = null,
    IReadOnlyList<Component>? Components = null,
    AllowedMentions? AllowedMentions = null,
    int? Flags = null,
    string? Nonce = null,
    bool? EnforceNonce = null,
    MessageReference? MessageReference = null,
    IReadOnlyList<OutgoingAttachment>? Attachments = null);

/// <param name="Id">The number of the file among those sent along.</param>
/// <param name="Description">What the picture shows, for those who do not see it; at most <see cref="Limits.AltText"/> characters.</param>
internal sealed record OutgoingAttachment(string Id, string Filename, string? Description);
