using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The components that hold or show others. Source: the platform's component reference.</summary>
internal static class LayoutRules
{
    public static IEnumerable<string> Of(JsonElement component, long? kind, string at) => kind switch
    {
        Kind.Row => Row(component, at),
        Kind.Section => Section(component, at),
        Kind.Text => Bounds.Needed(component, "content", 1, 4000, at),
        Kind.Thumbnail => Picture(component, at),
        Kind.Gallery => Gallery(component, at),
        Kind.File => File(component, at),
        Kind.Line => Bounds.Range(component, "spacing", 1, 2, at),
        Kind.Container => [.. Bounds.Count(component, "components", 1, 40, at), .. Bounds.Range(component, "accent_color", 0, 0xFFFFFF, at)],
        _ => [],
    };

    private static IEnumerable<string> Row(JsonElement row, string at)
    {
        var inside = row.Items("components");
        var buttons = inside.Count(component => component.Whole("type") is Kind.Button);
        if (inside.Count == 0) yield return $"{at}components: a row needs something in it";
        else if (buttons > 5) yield return $"{at}components: at most 5 buttons in a row, not {buttons}";
        else if (buttons < inside.Count && inside.Count > 1) yield return $"{at}components: a row holds buttons, or one list alone";
    }

    private static IEnumerable<string> Section(JsonElement section, string at) =>
    [
        .. section.Items("components").Count is >= 1 and <= 3 ? [] : new[] { $"{at}components: 1 to 3 texts in a section" },
        .. section.Field("accessory") is null ? new[] { $"{at}accessory: is needed" } : [],
    ];

    private static IEnumerable<string> Gallery(JsonElement gallery, string at)
    {
        var items = gallery.Items("items");
        if (items.Count is < 1 or > 10) yield return $"{at}items: 1 to 10 pictures, not {items.Count}";
        foreach (var (index, item) in items.Index())
            foreach (var reason in Picture(item, $"{at}items[{index}].")) yield return reason;
    }

    private static IEnumerable<string> Picture(JsonElement item, string at) =>
    [
        .. item.Field("media")?.Text("url") is { Length: > 0 } ? [] : new[] { $"{at}media.url: is needed" },
        .. Bounds.Length(item, "description", 1, 1024, at),
    ];

    private static IEnumerable<string> File(JsonElement file, string at)
    {
        if (file.Field("file")?.Text("url")?.StartsWith("attachment://", StringComparison.Ordinal) is not true)
            yield return $"{at}file.url: must begin with attachment://";
    }
}
