using System.Text.Json;
using LiteDB;

namespace ShedBot.Storage.Copies;

/// <summary>A stored document as plain JSON: numbers as numbers, texts as texts.</summary>
internal static class BsonJson
{
    public static void Write(Utf8JsonWriter json, BsonValue value)
    {
        switch (value.Type)
        {
            case BsonType.Document:
                json.WriteStartObject();
                foreach (var (name, part) in value.AsDocument.GetElements())
                {
                    json.WritePropertyName(name);
                    Write(json, part);
                }

                json.WriteEndObject();
                break;
            case BsonType.Array:
                json.WriteStartArray();
                foreach (var item in value.AsArray)
                {
                    Write(json, item);
                }

                json.WriteEndArray();
                break;
            case BsonType.Null:
                json.WriteNullValue();
                break;
            case BsonType.Boolean:
                json.WriteBooleanValue(value.AsBoolean);
                break;
            case BsonType.Int32 or BsonType.Int64:
                json.WriteNumberValue(value.AsInt64);
                break;
            case BsonType.Double when double.IsFinite(value.AsDouble):
                json.WriteNumberValue(value.AsDouble);
                break;
            case BsonType.String:
                json.WriteStringValue(value.AsString);
                break;
            default:
                // Nothing else is stored by us, but an export is for the day when something is wrong.
                json.WriteStringValue(value.ToString());
                break;
        }
    }
}
