using System.Text.Json;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>The few places where the published description is read otherwise than it is written.</summary>
internal static class Amendments
{
    private static readonly string[] CommandRequests =
        ["ApplicationCommandUpdateRequest", "ApplicationCommandCreateRequest", "ApplicationCommandPatchRequestPartial"];

    /// <summary>The description with our amendments. Strict: an object may carry only the fields the description names, because the
    /// description itself lets a misspelt one pass. Lenient: an id may also be a number.</summary>
    public static JsonElement Apply(JsonNode description, Strictness strictness)
    {
        var schemas = description["components"]!["schemas"]!.AsObject();

        // The platform's own pages show the permission bits of a command as a string, and it answers with one; its description asks for an integer.
        foreach (var name in CommandRequests)
            if (schemas[name]?["properties"]?["default_member_permissions"] is JsonObject permissions)
                permissions.ReplaceWith(new JsonObject { ["type"] = new JsonArray("string", "null"), ["pattern"] = "^[0-9]+$" });

        if (strictness is Strictness.Lenient)
            schemas["SnowflakeType"] = new JsonObject { ["type"] = new JsonArray("string", "integer"), ["pattern"] = "^(0|[1-9][0-9]*)$" };
        else
            foreach (var (_, schema) in schemas)
                if (schema is JsonObject shape && shape.ContainsKey("properties") && !shape.ContainsKey("additionalProperties"))
                    shape["additionalProperties"] = false;

        WithoutMarks(description);
        return JsonSerializer.SerializeToElement(description);
    }

    /// <summary>Takes out the one mark of the describer's own (it says that "any of" means "one of"), which no dialect of JSON Schema knows.</summary>
    private static void WithoutMarks(JsonNode? node)
    {
        if (node is JsonObject shape)
        {
            shape.Remove("x-discord-union");
            foreach (var (_, value) in shape) WithoutMarks(value);
        }
        else if (node is JsonArray list)
        {
            foreach (var item in list) WithoutMarks(item);
        }
    }
}
