using System.Text.Json;
using System.Text.RegularExpressions;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Commands as they are registered. Source: the platform's page on application commands; that a command for every club states
/// where it may be used is our own rule, because the default is everywhere.</summary>
internal static partial class CommandRules
{
    private const int MostLetters = 8000;

    /// <summary>The whole list that replaces what is registered.</summary>
    /// <param name="everywhere">Whether it is the list for all clubs, not for one.</param>
    public static IEnumerable<string> List(JsonElement body, bool everywhere, bool ours)
    {
        if (body.ValueKind is not JsonValueKind.Array) return [];
        var commands = body.EnumerateArray().ToList();
        return
        [
            .. commands.GroupBy(Type).Where(group => group.Count() > Most(group.Key)).Select(group => $"type {group.Key}: at most {Most(group.Key)} commands, not {group.Count()}"),
            .. commands.GroupBy(command => (Type(command), command.Text("name"))).Where(group => group.Count() > 1).Select(group => $"name: '{group.Key.Item2}' is used twice"),
            .. commands.Index().SelectMany(command => One(command.Item, everywhere, ours, $"[{command.Index}].")),
        ];
    }

    public static IEnumerable<string> One(JsonElement command, bool everywhere, bool ours, string at) =>
    [
        .. Type(command) is 1 ? Slash(command, at) : Menu(command, at),
        .. command.Text("default_member_permissions") is { } bits && !bits.All(char.IsAsciiDigit) ? new[] { $"{at}default_member_permissions: digits only" } : [],
        .. ours && everywhere && (command.Field("contexts") is null || command.Field("integration_types") is null) ? new[] { $"{at}contexts: must be stated, and integration_types" } : [],
        .. everywhere ? [] : Bounds.Absent(command, at, "only a command for every club has this", "contexts", "integration_types"),
        .. Letters(command) is > MostLetters and var letters ? new[] { $"{at}name: at most {MostLetters} characters over the whole command, not {letters}" } : [],
    ];

    /// <summary>A ready choice of an option, also one suggested while typing.</summary>
    public static IEnumerable<string> Choice(JsonElement choice, string at) =>
    [
        .. Bounds.Needed(choice, "name", 1, 100, at),
        .. choice.Field("value") is null ? new[] { $"{at}value: is needed" } : Bounds.Length(choice, "value", 1, 100, at),
    ];

    /// <summary>Whether a word may name a slash command or an option: lower case where the script has cases.</summary>
    public static bool IsName(string? name) =>
        name is not null && Named().IsMatch(name) && !name.Any(char.IsUpper);

    private static IEnumerable<string> Slash(JsonElement command, string at) =>
    [
        .. IsName(command.Text("name")) ? [] : new[] { $"{at}name: 1 to 32 letters, digits, - or _, in lower case" },
        .. Bounds.Needed(command, "description", 1, 100, at),
        .. OptionRules.Of(command, OptionRules.Level.Command, at),
    ];

    private static IEnumerable<string> Menu(JsonElement command, string at) =>
    [
        .. Bounds.Needed(command, "name", 1, 32, at),
        .. command.Text("description") is { Length: > 0 } ? new[] { $"{at}description: a menu command has none" } : [],
        .. Bounds.Absent(command, at, "a menu command has none", "options"),
    ];

    private static long Type(JsonElement command) => command.Whole("type") ?? 1;

    private static int Most(long type) => type is 1 ? 100 : 15;

    private static int Letters(JsonElement item) =>
        Longest(item, "name") + Longest(item, "description") + (item.Text("value")?.Length ?? 0)
        + item.Items("options").Sum(Letters) + item.Items("choices").Sum(Letters);

    /// <summary>Of a text and its translations the longest counts.</summary>
    private static int Longest(JsonElement item, string field) =>
        (item.Field($"{field}_localizations") is { ValueKind: JsonValueKind.Object } translated
            ? translated.EnumerateObject().Where(entry => entry.Value.ValueKind is JsonValueKind.String).Select(entry => entry.Value.GetString()!.Length)
            : [])
        .Append(item.Text(field)?.Length ?? 0).Max();

    [GeneratedRegex(@"^[-_'\p{L}\p{N}\p{IsDevanagari}\p{IsThai}]{1,32}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
