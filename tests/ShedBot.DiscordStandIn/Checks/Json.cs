using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks;

/// <summary>Reading of a body that may have any shape: what is not there, or is of another kind, reads as null or empty and never throws.</summary>
internal static class Json
{
    /// <summary>Whether the field is written at all, even as null.</summary>
    public static bool Has(this JsonElement element, string name) =>
        element.ValueKind is JsonValueKind.Object && element.TryGetProperty(name, out _);

    /// <summary>The field, or null when it is absent or null.</summary>
    public static JsonElement? Field(this JsonElement element, string name) =>
        element.ValueKind is JsonValueKind.Object && element.TryGetProperty(name, out var field) && field.ValueKind is not JsonValueKind.Null ? field : null;

    public static string? Text(this JsonElement element, string name) =>
        element.Field(name) is { ValueKind: JsonValueKind.String } text ? text.GetString() : null;

    public static long? Whole(this JsonElement element, string name) =>
        element.Field(name) is { ValueKind: JsonValueKind.Number } number && number.TryGetInt64(out var whole) ? whole : null;

    public static bool Says(this JsonElement element, string name) => element.Field(name) is { ValueKind: JsonValueKind.True };

    public static IReadOnlyList<JsonElement> Items(this JsonElement element, string name) =>
        element.Field(name) is { ValueKind: JsonValueKind.Array } list ? [.. list.EnumerateArray()] : [];
}
