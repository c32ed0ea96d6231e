using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The options of a slash command and of its sub-commands. Source: the platform's page on application commands.</summary>
internal static class OptionRules
{
    private const long SubCommand = 1, Group = 2, Words = 3, WholeNumber = 4, Channel = 7, Number = 10, File = 11;

    /// <summary>What holds the options.</summary>
    public enum Level
    {
        Command,
        Group,
        SubCommand,
    }

    public static IEnumerable<string> Of(JsonElement holder, Level level, string at)
    {
        var options = holder.Items("options");
        var subs = options.Count(IsSub);
        return
        [
            .. Bounds.Count(holder, "options", 0, 25, at),
            .. level is Level.Group && (options.Count == 0 || subs < options.Count) ? new[] { $"{at}options: a group holds sub-commands only" } : [],
            .. level is Level.Command && subs > 0 && subs < options.Count ? new[] { $"{at}options: sub-commands and values do not mix" } : [],
            .. options.SkipWhile(option => option.Says("required")).Any(option => option.Says("required")) ? new[] { $"{at}options: the required ones come first" } : [],
            .. options.GroupBy(option => option.Text("name")).Where(group => group.Count() > 1).Select(group => $"{at}options: '{group.Key}' is used twice"),
            .. options.Index().SelectMany(option => One(option.Item, level, $"{at}options[{option.Index}].")),
        ];
    }

    private static IEnumerable<string> One(JsonElement option, Level level, string at)
    {
        var type = option.Whole("type");
        return
        [
            .. type is >= SubCommand and <= File ? [] : new[] { $"{at}type: 1 to 11, not {type}" },
            .. CommandRules.IsName(option.Text("name")) ? [] : new[] { $"{at}name: 1 to 32 letters, digits, - or _, in lower case" },
            .. Bounds.Needed(option, "description", 1, 100, at),
            .. type switch
            {
                SubCommand => level is Level.SubCommand ? [$"{at}type: sub-commands do not nest"] : Of(option, Level.SubCommand, at),
                Group => level is Level.Command ? Of(option, Level.Group, at) : [$"{at}type: groups do not nest"],
                _ => Value(option, type, at),
            },
        ];
    }

    private static IEnumerable<string> Value(JsonElement option, long? type, string at) =>
    [
        .. type is Words or WholeNumber or Number ? [] : Bounds.Absent(option, at, "only words and numbers have this", "choices", "autocomplete"),
        .. type is WholeNumber or Number ? [] : Bounds.Absent(option, at, "only numbers have this", "min_value", "max_value"),
        .. type is Words ? [] : Bounds.Absent(option, at, "only words have this", "min_length", "max_length"),
        .. type is Channel ? [] : Bounds.Absent(option, at, "only a channel has this", "channel_types"),
        .. option.Says("autocomplete") && option.Items("choices").Count > 0 ? new[] { $"{at}choices: not beside autocomplete" } : [],
        .. Bounds.Range(option, "min_length", 0, 6000, at),
        .. Bounds.Range(option, "max_length", 1, 6000, at),
        .. Bounds.Order(option, "min_length", "max_length", at),
        .. Bounds.Order(option, "min_value", "max_value", at),
        .. Bounds.Count(option, "choices", 0, 25, at),
        .. option.Items("choices").Index().SelectMany(choice => CommandRules.Choice(choice.Item, $"{at}choices[{choice.Index}].")),
    ];

    private static bool IsSub(JsonElement option) => option.Whole("type") is SubCommand or Group;
}
