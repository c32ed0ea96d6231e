using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>A button's fields by its style. Source: the platform's component reference, "Button".</summary>
internal static class ButtonRules
{
    private const long Link = 5, Bought = 6;

    public static IEnumerable<string> Of(JsonElement button, string at) =>
    [
        .. Bounds.Length(button, "label", 1, 80, at),
        .. Bounds.Length(button, "url", 1, 512, at),
        .. button.Whole("style") switch
        {
            >= 1 and <= 4 => Pressed(button, at),
            Link => Leading(button, at),
            Bought => Buying(button, at),
            var style => [$"{at}style: 1 to 6, not {style}"],
        },
    ];

    private static IEnumerable<string> Pressed(JsonElement button, string at) =>
    [
        .. Bounds.Needed(button, "custom_id", 1, 100, at),
        .. Bounds.Absent(button, at, "only a link or a bought thing has one", "url", "sku_id"),
        .. Face(button, at),
    ];

    private static IEnumerable<string> Leading(JsonElement button, string at) =>
    [
        .. Bounds.Needed(button, "url", 1, 512, at),
        .. Bounds.Absent(button, at, "a link has none", "custom_id", "sku_id"),
        .. Face(button, at),
    ];

    private static IEnumerable<string> Buying(JsonElement button, string at) =>
    [
        .. button.Field("sku_id") is null ? new[] { $"{at}sku_id: is needed" } : [],
        .. Bounds.Absent(button, at, "a button of this style has none", "custom_id", "url", "label", "emoji"),
    ];

    private static IEnumerable<string> Face(JsonElement button, string at) =>
        button.Field("label") is null && button.Field("emoji") is null ? [$"{at}label: a button needs words or a sign"] : [];
}
