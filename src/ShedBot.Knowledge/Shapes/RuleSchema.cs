using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Shapes;

/// <summary>The format of rule files as a JSON Schema (2020-12), so that editors can complete and check while a rule is being written.</summary>
/// <remarks>Written from the tables that the loader checks with. It knows what one file can know; names across files are the linter's.</remarks>
public static class RuleSchema
{
    /// <summary>Where the schema lies, relative to the folder of the rules.</summary>
    public const string File = "schema/rules.schema.json";

    /// <summary>The schema, indented, with a newline at the end.</summary>
    public static string Text { get; } = Write();

    private static string Write()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", "ShedBot rule file");
            Item(json, AdviceShapes.File);
            json.WriteStartObject("$defs");
            foreach (var item in Inner(AdviceShapes.File).Distinct().OrderBy(i => i.Kind, StringComparer.Ordinal))
            {
                json.WriteStartObject(item.Kind);
                Item(json, item);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static IEnumerable<ItemShape> Inner(Shape shape) => shape switch
    {
        ItemShape item => item.Keys.SelectMany(k => (k.Shape is ItemShape own ? [own] : Array.Empty<ItemShape>()).Concat(Inner(k.Shape))),
        ListShape { Item: ItemShape item } => Inner(item).Prepend(item),
        ListShape list => Inner(list.Item),
        MapShape map => Inner(map.Value),
        _ => [],
    };

    private static void Item(Utf8JsonWriter json, ItemShape item)
    {
        json.WriteString("description", item.Doc);
        json.WriteString("type", "object");
        json.WriteBoolean("additionalProperties", false);
        json.WriteStartArray("required");
        foreach (var key in item.Keys.Where(k => k.Required)) json.WriteStringValue(key.Name);
        json.WriteEndArray();
        json.WriteStartObject("properties");
        foreach (var key in item.Keys)
        {
            json.WriteStartObject(key.Name);
            Value(json, key.Shape);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Value(Utf8JsonWriter json, Shape shape)
    {
        if (shape is ItemShape item)
        {
            json.WriteString("$ref", "#/$defs/" + Uri.EscapeDataString(item.Kind));
            return;
        }

        json.WriteString("description", shape.Doc);
        switch (shape)
        {
            case TextShape:
                // A bare 6202 is a number to an editor, and a text to the loader.
                Types(json, "string", "number");
                json.WriteNumber("minLength", 1);
                json.WriteNumber("maxLength", TextShape.MaxLength);
                break;
            case IdShape:
                json.WriteString("type", "string");
                json.WriteString("pattern", IdShape.Pattern);
                json.WriteNumber("maxLength", IdShape.MaxLength);
                break;
            case WordShape words:
                json.WriteStartArray("enum");
                foreach (var word in words.Words) json.WriteStringValue(word);
                json.WriteEndArray();
                break;
            case NumberShape number:
                json.WriteString("type", number.Whole ? "integer" : "number");
                json.WriteNumber("minimum", number.Min);
                json.WriteNumber("maximum", number.Max);
                break;
            case IntervalShape:
                json.WriteString("type", "string");
                json.WriteString("pattern", IntervalWords.Pattern);
                break;
            case DateShape:
                json.WriteString("type", "string");
                json.WriteString("format", "date");
                break;
            case ListShape list:
                Types(json, list.AtLeast == 0 ? ["array", "null"] : ["array"]);
                json.WriteNumber("minItems", list.AtLeast);
                json.WriteStartObject("items");
                Value(json, list.Item);
                json.WriteEndObject();
                break;
            case MapShape map:
                Types(json, map.AtLeast == 0 ? ["object", "null"] : ["object"]);
                json.WriteNumber("minProperties", map.AtLeast);
                json.WriteStartObject("additionalProperties");
                Value(json, map.Value);
                json.WriteEndObject();
                break;
        }
    }

    private static void Types(Utf8JsonWriter json, params ReadOnlySpan<string> types)
    {
        json.WriteStartArray("type");
        foreach (var type in types) json.WriteStringValue(type);
        json.WriteEndArray();
    }
}
