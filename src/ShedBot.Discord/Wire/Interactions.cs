using System.Text.Json;

namespace ShedBot.Discord.Wire;

internal static class InteractionTypes
{
    public const int Command = 2, Component = 3, Autocomplete = 4, ModalSubmit = 5;
}

internal static class AnswerTypes
{
    public const int Message = 4, DeferredMessage = 5, DeferredUpdate = 6, Update = 7, Choices = 8, Modal = 9;
}

internal static class CommandTypes
{
    public const int Slash = 1, User = 2, Message = 3;
}

/// <summary>Somebody used a command, pressed a button, picked from a list or sent in a form.</summary>
/// <param name="Token">A secret that lives <see cref="Limits.TokenMinutes"/> minutes: never logged, never kept.</param>
/// <param name="Member">Set in a club.</param>
/// <param name="User">Set in a direct conversation.</param>
/// <param name="Message">The message that was pressed on.</param>
/// <param name="AppPermissions">What we may do in this channel.</param>
internal sealed record Interaction(
    Snowflake Id,
    Snowflake ApplicationId,
    int Type,
    string Token,
    InteractionData? Data = null,
    Snowflake GuildId = default,
    Channel? Channel = null,
    Snowflake ChannelId = default,
    GuildMember? Member = null,
    User? User = null,
    Message? Message = null,
    string? AppPermissions = null,
    string? Locale = null)
{
    public User? Who => Member?.User ?? User;

    // The token must not get into a log by way of a whole record.
    public override string ToString() => $"Interaction {Id}";
}

internal sealed record InteractionData(
    Snowflake Id = default,
    string? Name = null,
    int? Type = null,
    string? CustomId = null,
    int? ComponentType = null,
    IReadOnlyList<string>? Values = null,
    IReadOnlyList<CommandOptionValue>? Options = null,
    IReadOnlyList<Component>? Components = null,
    Resolved? Resolved = null,
    Snowflake TargetId = default);

internal sealed record CommandOptionValue(
    string Name, int Type = 0, JsonElement? Value = null, IReadOnlyList<CommandOptionValue>? Options = null, bool? Focused = null)
{
    public string? Text => Value is { ValueKind: JsonValueKind.String } v ? v.GetString() : Value?.ToString();
}

internal sealed record Resolved(
    IReadOnlyDictionary<string, User>? Users = null,
    IReadOnlyDictionary<string, Channel>? Channels = null,
    IReadOnlyDictionary<string, Role>? Roles = null,
    IReadOnlyDictionary<string, Message>? Messages = null,
    IReadOnlyDictionary<string, Attachment>? Attachments = null);

/// <summary>The first answer to an interaction.</summary>
internal sealed record InteractionAnswer(int Type, InteractionAnswerData? Data = null);

/// <summary>A message, or a form; names are the platform's.</summary>
internal sealed record InteractionAnswerData(
    string? Content = null,
    IReadOnlyList<Component>? Components = null,
    AllowedMentions? AllowedMentions = null,
    int? Flags = null,
    IReadOnlyList<OutgoingAttachment>? Attachments = null,
    string? CustomId = null,
    string? Title = null,
    IReadOnlyList<CommandChoice>? Choices = null)
{
    public static InteractionAnswerData Of(MessageBody body) =>
        new(body.Content, body.Components, body.AllowedMentions, body.Flags, body.Attachments);
}

internal sealed record InteractionCallback(InteractionCallbackResource? Resource = null);

internal sealed record InteractionCallbackResource(Message? Message = null);
