using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ShedBot.Storage.Writing;

/// <summary>Takes a name out of the changes of a proposal: they are kept as JSON, with credits of their own and with rules as text inside.</summary>
internal static class CreditChanges
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <returns>The changes without those names, or the very same text where they do not stand or where it is no JSON.</returns>
    public static string Without(string changes, IReadOnlySet<string> names)
    {
        try
        {
            return JsonNode.Parse(changes) is { } root && Leave(root, names) ? root.ToJsonString(Readable) : changes;
        }
        catch (JsonException)
        {
            return CreditLines.Without(changes, names);
        }
    }

    private static bool Leave(JsonNode node, IReadOnlySet<string> names)
    {
        var changed = false;
        switch (node)
        {
            case JsonArray list:
                foreach (var item in list)
                {
                    changed |= item is not null && Leave(item, names);
                }

                break;
            case JsonObject parts:
                foreach (var (key, value) in parts.ToList())
                {
                    if (value is JsonValue && value.GetValueKind() == JsonValueKind.String)
                    {
                        var text = value.GetValue<string>();
                        var after = key is "author" or "saidBy" ? (names.Contains(text) ? CreditLines.Nobody : text) : CreditLines.Without(text, names);
                        if (after != text)
                        {
                            parts[key] = after;
                            changed = true;
                        }
                    }
                    else
                    {
                        changed |= value is not null && Leave(value, names);
                    }
                }

                break;
        }

        return changed;
    }
}
