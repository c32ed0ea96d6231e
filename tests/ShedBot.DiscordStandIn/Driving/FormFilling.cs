using System.Globalization;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Driving;

/// <summary>Makes what an app sends when a form is filled in, and refuses what an app would not let through.</summary>
internal static class FormFilling
{
    private const int ActionRow = 1, TextInput = 4, Label = 18, RadioGroup = 21, Checkbox = 23;

    public static JsonArray Fill(JsonObject form, IReadOnlyDictionary<string, object> values)
    {
        var shown = form["components"] as JsonArray ?? [];
        ComponentTree.Finish(shown, _ => null);
        var unknown = values.Keys.Except(ComponentTree.All(shown).Select(p => ComponentTree.TextOf(p, "custom_id"))).FirstOrDefault();
        if (unknown is not null)
            throw new InvalidOperationException($"The form has no '{unknown}'.");
        return Wire.ArrayOf(shown.OfType<JsonObject>().Select(part => (JsonNode)Top(part, values)));
    }

    private static JsonObject Top(JsonObject part, IReadOnlyDictionary<string, object> values)
    {
        var top = new JsonObject { ["type"] = ComponentTree.TypeOf(part), ["id"] = part["id"]!.GetValue<int>() };
        if (ComponentTree.TypeOf(part) == Label)
            top["component"] = Filled((JsonObject)part["component"]!, values);
        if (ComponentTree.TypeOf(part) == ActionRow)
            top["components"] = Wire.ArrayOf(((JsonArray)part["components"]!).OfType<JsonObject>().Select(p => (JsonNode)Filled(p, values)));
        return top;
    }

    private static JsonObject Filled(JsonObject part, IReadOnlyDictionary<string, object> values)
    {
        var customId = part["custom_id"]!.ToString();
        var type = ComponentTree.TypeOf(part);
        values.TryGetValue(customId, out var value);
        var filled = new JsonObject { ["type"] = type, ["id"] = part["id"]!.GetValue<int>(), ["custom_id"] = customId };
        switch (type)
        {
            case TextInput:
                filled["value"] = Text(part, customId, value as string ?? ComponentTree.TextOf(part, "value") ?? "");
                break;
            case RadioGroup:
                filled["value"] = value is string chosen ? Offered(part, customId, chosen) : Missing(part, customId, null);
                break;
            case Checkbox:
                filled["value"] = value as bool? ?? false;
                break;
            default:
                var many = value as IEnumerable<string> ?? [];
                filled["values"] = Wire.ArrayOf(many.Select(v => (JsonNode)Offered(part, customId, v)));
                if (!many.Any())
                    Missing(part, customId, null);
                break;
        }
        return filled;
    }

    private static bool Required(JsonObject part) => part["required"]?.GetValue<bool>() ?? true;

    private static JsonNode? Missing(JsonObject part, string customId, JsonNode? none) =>
        Required(part) ? throw new InvalidOperationException($"The form needs '{customId}'.") : none;

    private static string Text(JsonObject part, string customId, string text)
    {
        if (text.Length == 0 && Required(part))
            throw new InvalidOperationException($"The form needs '{customId}'.");
        var least = part["min_length"]?.GetValue<int>() ?? 0;
        var most = part["max_length"]?.GetValue<int>() ?? 4000;
        if (text.Length > 0 && (text.Length < least || text.Length > most))
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"'{customId}' takes {least} to {most} characters."));
        return text;
    }

    private static string Offered(JsonObject part, string customId, string value)
    {
        if (part["options"] is JsonArray options && !options.OfType<JsonObject>().Any(o => o["value"]?.ToString() == value))
            throw new InvalidOperationException($"'{value}' is not offered by '{customId}'.");
        return value;
    }
}
