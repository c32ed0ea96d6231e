using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>Lists to choose from, in messages and modals. Source: the platform's component reference; that two options may not share a
/// value is from memory.</summary>
internal static class SelectRules
{
    public static IEnumerable<string> Of(JsonElement select, long? kind, string at) =>
    [
        .. Bounds.Needed(select, "custom_id", 1, 100, at),
        .. Bounds.Length(select, "placeholder", 1, 150, at),
        .. Bounds.Range(select, "min_values", 0, 25, at),
        .. Bounds.Range(select, "max_values", 1, 25, at),
        .. Bounds.Order(select, "min_values", "max_values", at),
        .. Bounds.Count(select, "default_values", 0, 25, at),
        .. kind is Kind.Choice ? Options(select, 1, 25, select.Whole("max_values") ?? 1, at) : Bounds.Absent(select, at, "only a list of our own words has options", "options"),
        .. kind is Kind.ChannelPick ? [] : Bounds.Absent(select, at, "only a list of channels has these", "channel_types"),
    ];

    /// <summary>The options of a list, a radio group or a group of ticks.</summary>
    /// <param name="picks">How many of them a person may pick.</param>
    public static IEnumerable<string> Options(JsonElement holder, int least, int most, long picks, string at)
    {
        var options = holder.Items("options");
        if (options.Count < least || options.Count > most) yield return $"{at}options: {least} to {most} of them, not {options.Count}";

        foreach (var (index, option) in options.Index())
        {
            var here = $"{at}options[{index}].";
            foreach (var reason in Bounds.Needed(option, "label", 1, 100, here).Concat(Bounds.Needed(option, "value", 1, 100, here)).Concat(Bounds.Length(option, "description", 1, 100, here)))
                yield return reason;
        }

        foreach (var twice in options.Select(option => option.Text("value")).OfType<string>().GroupBy(value => value, StringComparer.Ordinal).Where(group => group.Count() > 1))
            yield return $"{at}options: the value '{twice.Key}' is used twice";

        var chosen = options.Count(option => option.Says("default"));
        if (chosen > picks) yield return $"{at}options: {chosen} are chosen beforehand, more than may be picked";
    }
}
