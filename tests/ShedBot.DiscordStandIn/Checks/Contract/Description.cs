using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>The platform's published description (OpenAPI 3.1, whose schemas are JSON Schema 2020-12), ready to validate against.
/// Safe to use from several threads.</summary>
internal sealed class Description
{
    private const string Home = "https://description.invalid/openapi";
    private static readonly EvaluationOptions Thoroughly = new() { OutputFormat = OutputFormat.Hierarchical, RequireFormatValidation = true };
    private readonly ConcurrentDictionary<string, Lazy<JsonSchema>> built = new(StringComparer.Ordinal);
    private readonly BuildOptions options = new() { SchemaRegistry = new SchemaRegistry() };
    private readonly JsonElement root;

    private Description(JsonElement root)
    {
        this.root = root;
        options.SchemaRegistry.Register(new JsonElementBaseDocument(root, new Uri(Home)));
    }

    public static Description Read(string path, Strictness strictness) =>
        Parse(File.ReadAllText(path), strictness);

    public static Description Parse(string json, Strictness strictness) => new(Amendments.Apply(JsonNode.Parse(json)!, strictness));

    /// <param name="route">The path's template, spelt as in the description.</param>
    /// <returns>The operation, or null when the platform has none of that method on that route.</returns>
    public Operation? Find(string method, string route)
    {
        // The description writes methods in small letters.
#pragma warning disable CA1308
        var verb = method.ToLowerInvariant();
#pragma warning restore CA1308
        return root.GetProperty("paths").TryGetProperty(route, out var path) && path.TryGetProperty(verb, out var operation)
            ? new Operation(path, operation, $"/paths/{Escaped(route)}", verb)
            : null;
    }

    /// <param name="pointer">JSON Pointer (RFC 6901) of a schema inside the description.</param>
    public EvaluationResults Evaluate(string pointer, JsonElement value) =>
        built.GetOrAdd(pointer, p => new Lazy<JsonSchema>(() => Build(p))).Value.Evaluate(value, Thoroughly);

    private JsonSchema Build(string pointer)
    {
        var reference = new JsonObject { ["$ref"] = $"{Home}#{string.Join('/', pointer.Split('/').Select(Uri.EscapeDataString))}" };
        // The registry of schemas is shared and grows while one is built.
        lock (options)
            return JsonSchema.Build(JsonSerializer.SerializeToElement(reference), options);
    }

    private static string Escaped(string segment) => segment.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
