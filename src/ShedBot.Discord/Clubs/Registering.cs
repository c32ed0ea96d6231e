using System.Text.Json;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Registers the commands, only when they are not registered as they are: the platform counts how often new ones are made.</summary>
internal sealed class Registering(Parts parts)
{
    /// <param name="guild">Only there, at once, for trying them out; none: in all clubs. Never both: each would show twice.</param>
    public async Task EnsureAsync(Snowflake guild, CancellationToken ct)
    {
        var there = await parts.Rest.ListCommandsAsync(parts.Me.Application, guild, ct);
        if (Same(there, guild)) return;
        var commands = Wanted(guild);
        await parts.Rest.PutCommandsAsync(parts.Me.Application, guild, commands, ct);
        parts.Log.Registered(commands.Count);
    }

    /// <summary>What the platform gives back has ids and defaults besides; only what we say is compared.</summary>
    private static bool Same(IReadOnlyList<Command> there, Snowflake guild) =>
        there.Select(c => Canonical(c, guild)).Order(StringComparer.Ordinal)
            .SequenceEqual(ClubCommands.All.Select(c => Canonical(c, guild)).Order(StringComparer.Ordinal), StringComparer.Ordinal);

    /// <summary>Where a command may be used cannot be said for one club alone.</summary>
    private static IReadOnlyList<Command> Wanted(Snowflake guild) =>
        guild.IsNone ? ClubCommands.All : [.. ClubCommands.All.Select(c => c with { Contexts = null, IntegrationTypes = null })];

    private static string Canonical(Command command, Snowflake guild) => JsonSerializer.Serialize(
        command with
        {
            Id = null,
            Description = string.IsNullOrEmpty(command.Description) ? null : command.Description,
            Options = Canonical(command.Options),
            Contexts = guild.IsNone ? command.Contexts : null,
            IntegrationTypes = guild.IsNone ? command.IntegrationTypes : null,
        },
        WireJson.Default.Command);

    private static IReadOnlyList<CommandOption>? Canonical(IReadOnlyList<CommandOption>? options) => options is null or { Count: 0 }
        ? null
        : [.. options.Select(o => o with
        {
            Required = o.Required == true ? true : null,
            Autocomplete = o.Autocomplete == true ? true : null,
            Options = Canonical(o.Options),
            Choices = o.Choices is { Count: > 0 } ? o.Choices : null,
            ChannelTypes = o.ChannelTypes is { Count: > 0 } ? o.ChannelTypes : null,
        })];
}
