using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>What a person fills in inside a modal. Source: the platform's component reference, "Label" and the kinds it may hold.</summary>
internal static class FormRules
{
    public static IEnumerable<string> Of(Node node) =>
    [
        .. Bounds.Absent(node.Component, node.At, "nothing in a modal can be switched off", "disabled"),
        .. Least(node),
        .. node.Kind switch
        {
            var kind when Kind.IsSelect(kind) => SelectRules.Of(node.Component, kind, node.At),
            Kind.Text => LayoutRules.Of(node.Component, node.Kind, node.At),
            Kind.Label => Label(node.Component, node.At),
            Kind.TextInput => Words(node),
            Kind.Upload => Upload(node.Component, node.At),
            Kind.Radio => [.. Name(node), .. SelectRules.Options(node.Component, 2, 10, 1, node.At)],
            Kind.Ticks => Ticks(node),
            Kind.Tick => [.. Name(node), .. Bounds.Absent(node.Component, node.At, "a single tick cannot be required", "required")],
            _ => [],
        },
    ];

    private static IEnumerable<string> Name(Node node) => Bounds.Needed(node.Component, "custom_id", 1, 100, node.At);

    private static IEnumerable<string> Label(JsonElement label, string at) =>
    [
        .. Bounds.Needed(label, "label", 1, 45, at),
        .. Bounds.Length(label, "description", 1, 100, at),
        .. label.Field("component") is null ? new[] { $"{at}component: is needed" } : [],
    ];

    private static IEnumerable<string> Words(Node node) =>
    [
        .. Name(node),
        .. node.Component.Whole("style") is 1 or 2 ? [] : new[] { $"{node.At}style: 1 or 2" },
        .. Bounds.Range(node.Component, "min_length", 0, 4000, node.At),
        .. Bounds.Range(node.Component, "max_length", 1, 4000, node.At),
        .. Bounds.Order(node.Component, "min_length", "max_length", node.At),
        .. Bounds.Length(node.Component, "value", 0, 4000, node.At),
        .. Bounds.Length(node.Component, "placeholder", 1, 100, node.At),
        .. node.Parent is Kind.Label ? Bounds.Absent(node.Component, node.At, "the label around it carries the words", "label") : [],
    ];

    private static IEnumerable<string> Upload(JsonElement upload, string at) =>
    [
        .. Bounds.Needed(upload, "custom_id", 1, 100, at),
        .. Bounds.Range(upload, "min_values", 0, 10, at),
        .. Bounds.Range(upload, "max_values", 1, 10, at),
        .. Bounds.Order(upload, "min_values", "max_values", at),
        .. Bounds.Count(upload, "file_types", 0, 10, at),
    ];

    private static IEnumerable<string> Ticks(Node node) =>
    [
        .. Name(node),
        .. Bounds.Range(node.Component, "min_values", 0, 10, node.At),
        .. Bounds.Range(node.Component, "max_values", 1, 10, node.At),
        .. Bounds.Order(node.Component, "min_values", "max_values", node.At),
        .. SelectRules.Options(node.Component, 1, 10, node.Component.Whole("max_values") ?? 10, node.At),
    ];

    /// <summary>Something required cannot be answered with nothing; and it is required unless it says otherwise.</summary>
    private static IEnumerable<string> Least(Node node)
    {
        var required = node.Component.Field("required") is not { ValueKind: JsonValueKind.False };
        if (required && node.Component.Whole("min_values") is 0)
            yield return $"{node.At}min_values: a required answer needs at least 1";
    }
}
