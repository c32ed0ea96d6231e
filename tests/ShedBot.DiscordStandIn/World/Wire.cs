using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Small readings and writings of the platform's JSON. Readers take ids as strings or as numbers, because clients send both.</summary>
internal static class Wire
{
    public static string Text(this ulong id) => id.ToString(CultureInfo.InvariantCulture);

    public static string Bits(this Rights rights) => ((ulong)rights).Text();

    public static string Text(this DateTimeOffset at) =>
        at.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'+00:00'", CultureInfo.InvariantCulture);

    public static JsonArray ArrayOf(IEnumerable<JsonNode?> items) => new([.. items]);

    public static JsonArray ArrayOf(IEnumerable<ulong> ids) => new([.. ids.Select(i => (JsonNode)i.Text())]);

    /// <summary>The member of that name; null when absent. A JSON null is returned as such.</summary>
    public static JsonElement? Of(this JsonElement? body, string name) =>
        body is { ValueKind: JsonValueKind.Object } b && b.TryGetProperty(name, out var found) ? found : null;

    public static JsonElement? Of(this JsonElement body, string name) => Of((JsonElement?)body, name);

    public static ulong? AsId(this JsonElement? value) => value switch
    {
        { ValueKind: JsonValueKind.Number } v when v.TryGetUInt64(out var n) => n,
        { ValueKind: JsonValueKind.String } v when ulong.TryParse(v.GetString(), NumberStyles.None, CultureInfo.InvariantCulture, out var n) => n,
        _ => null,
    };

    public static string? AsText(this JsonElement? value) => value is { ValueKind: JsonValueKind.String } v ? v.GetString() : null;

    public static long? AsNumber(this JsonElement? value) => value is { ValueKind: JsonValueKind.Number } v && v.TryGetInt64(out var n) ? n : null;

    public static bool? AsFlag(this JsonElement? value) => value switch
    {
        { ValueKind: JsonValueKind.True } => true,
        { ValueKind: JsonValueKind.False } => false,
        _ => null,
    };

    public static IEnumerable<JsonElement> AsItems(this JsonElement? value) =>
        value is { ValueKind: JsonValueKind.Array } v ? v.EnumerateArray() : [];

    public static JsonNode? AsNode(this JsonElement value) => JsonNode.Parse(value.GetRawText());

    public static JsonArray AsArray(this JsonElement? value) =>
        value is { ValueKind: JsonValueKind.Array } v ? (JsonArray)JsonNode.Parse(v.GetRawText())! : [];

    /// <summary>A frozen copy, safe to hand out while the original goes on changing.</summary>
    public static JsonElement Frozen(this JsonNode? node) => JsonSerializer.SerializeToElement(node);
}
