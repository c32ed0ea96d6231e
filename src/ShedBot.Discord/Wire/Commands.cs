namespace ShedBot.Discord.Wire;

internal static class OptionTypes
{
    public const int SubCommand = 1, Text = 3, Whole = 4, YesNo = 5, User = 6, Channel = 7, Role = 8, Number = 10, Attachment = 11;
}

/// <summary>A command as it is registered; what the platform gives back has the same fields and more.</summary>
/// <param name="DefaultMemberPermissions">Bits as a text; who may use it unless the club says otherwise. Checked again in our own code.</param>
/// <param name="Contexts">0 in a club, 1 in a direct conversation with us.</param>
internal sealed record Command(
    string Name,
    int Type,
    string? Description = null,
    IReadOnlyList<CommandOption>? Options = null,
    string? DefaultMemberPermissions = null,
    IReadOnlyList<int>? Contexts = null,
    IReadOnlyList<int>? IntegrationTypes = null,
    Snowflake? Id = null);

internal sealed record CommandOption(
    string Name,
    string Description,
    int Type,
    bool? Required = null,
    IReadOnlyList<CommandChoice>? Choices = null,
    IReadOnlyList<CommandOption>? Options = null,
    IReadOnlyList<int>? ChannelTypes = null,
    int? MinLength = null,
    int? MaxLength = null,
    bool? Autocomplete = null);

internal sealed record CommandChoice(string Name, string Value);
