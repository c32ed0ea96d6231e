using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>One method on one route of the description.</summary>
/// <param name="PathItem">What holds for every method of the route.</param>
/// <param name="Pointer">JSON Pointer of the route.</param>
/// <param name="Verb">The method as the description spells it, in small letters.</param>
internal sealed record Operation(JsonElement PathItem, JsonElement Item, string Pointer, string Verb)
{
    /// <summary>The query parameters the operation knows, each with the pointer of its schema.</summary>
    public IEnumerable<(string Name, string Pointer)> Query =>
        In(PathItem, Pointer).Concat(In(Item, $"{Pointer}/{Verb}"));

    public bool TakesBody => Content is not null;

    public bool NeedsBody => Item.TryGetProperty("requestBody", out var body) && body.TryGetProperty("required", out var needed) && needed.GetBoolean();

    public bool TakesFiles => Content is { } content && content.TryGetProperty("multipart/form-data", out _);

    /// <summary>Pointer of the schema of the JSON body; null when the operation takes no JSON.</summary>
    public string? Body => Json is null ? null : $"{Pointer}/{Verb}/requestBody/content/application~1json/schema";

    /// <summary>When the body may be one of several shapes, their names in order; otherwise empty.</summary>
    public IReadOnlyList<string> Branches =>
        Json is { } json && json.TryGetProperty("schema", out var schema) && schema.TryGetProperty("anyOf", out var union)
            ? [.. union.EnumerateArray().Select(branch => branch.GetProperty("$ref").GetString()!.Split('/')[^1])]
            : [];

    private JsonElement? Content => Item.TryGetProperty("requestBody", out var body) ? body.GetProperty("content") : null;

    private JsonElement? Json => Content is { } content && content.TryGetProperty("application/json", out var json) ? json : null;

    private static IEnumerable<(string, string)> In(JsonElement holder, string pointer)
    {
        if (!holder.TryGetProperty("parameters", out var parameters)) yield break;
        foreach (var (index, parameter) in parameters.EnumerateArray().Index())
            if (parameter.GetProperty("in").ValueEquals("query"))
                yield return (parameter.GetProperty("name").GetString()!, $"{pointer}/parameters/{index}/schema");
    }
}
