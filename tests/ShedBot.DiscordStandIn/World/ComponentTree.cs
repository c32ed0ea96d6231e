using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Components of a message: walking them, and finishing them as the platform does before it tells them again.</summary>
internal static class ComponentTree
{
    private const int Button = 2, Thumbnail = 11, Gallery = 12, File = 13, Separator = 14, Container = 17, TextDisplay = 10;

    /// <summary>Every component, parents before children, in reading order.</summary>
    public static IEnumerable<JsonObject> All(JsonNode? at)
    {
        if (at is JsonArray list)
        {
            foreach (var found in list.SelectMany(All))
                yield return found;
        }
        else if (at is JsonObject part && part.ContainsKey("type"))
        {
            yield return part;
            foreach (var below in new[] { part["components"], part["component"], part["accessory"] }.SelectMany(All))
                yield return below;
        }
    }

    public static int TypeOf(JsonObject part) => part["type"] is JsonValue v && v.TryGetValue<int>(out var type) ? type : 0;

    public static string? TextOf(JsonObject part, string name) => part[name] is JsonValue v && v.TryGetValue<string>(out var text) ? text : null;

    /// <summary>All text that shows: the words of text displays, in order.</summary>
    public static string Words(JsonArray components) =>
        string.Join('\n', All(components).Where(p => TypeOf(p) == TextDisplay).Select(p => TextOf(p, "content")));

    /// <summary>The live part of that custom id; null when it is not there or greyed out.</summary>
    public static JsonObject? Pressable(JsonArray components, string customId) =>
        All(components).FirstOrDefault(p => TextOf(p, "custom_id") == customId && p["disabled"]?.GetValue<bool>() != true);

    /// <summary>Numbers parts that have no number of their own (absent or 0) from 1 up, nested ones included, skipping numbers taken;
    /// fills in what the platform fills in; points media at the message's files.</summary>
    public static void Finish(JsonArray components, Func<string, JsonObject?> mediaOf)
    {
        var parts = All(components).ToList();
        var taken = parts.Select(IdOf).Where(id => id != 0).ToHashSet();
        var next = 1;
        foreach (var part in parts)
        {
            if (IdOf(part) == 0)
            {
                while (!taken.Add(next))
                    next++;
                part["id"] = next;
            }
            FillIn(part, mediaOf);
        }
    }

    private static int IdOf(JsonObject part) => part["id"] is JsonValue v && v.TryGetValue<int>(out var id) ? id : 0;

    private static void FillIn(JsonObject part, Func<string, JsonObject?> mediaOf)
    {
        switch (TypeOf(part))
        {
            case Container:
                part.TryAdd("accent_color", null);
                part.TryAdd("spoiler", false);
                break;
            case Separator:
                part.TryAdd("divider", true);
                part.TryAdd("spacing", 1);
                break;
            case Thumbnail:
                part.TryAdd("spoiler", false);
                PointAt(part, "media", mediaOf);
                break;
            case File:
                part.TryAdd("spoiler", false);
                PointAt(part, "file", mediaOf);
                break;
            case Gallery:
                foreach (var item in (part["items"] as JsonArray ?? []).OfType<JsonObject>())
                {
                    item.TryAdd("spoiler", false);
                    PointAt(item, "media", mediaOf);
                }
                break;
            case >= 3 and <= 8 when TypeOf(part) != 4:
                part.TryAdd("min_values", 1);
                part.TryAdd("max_values", 1);
                break;
            case Button:
                part.TryAdd("style", 2);
                break;
        }
    }

    private static void PointAt(JsonObject holder, string name, Func<string, JsonObject?> mediaOf)
    {
        const string ownFile = "attachment://";
        if (holder[name] is not JsonObject media || TextOf(media, "url") is not { } url || !url.StartsWith(ownFile, StringComparison.Ordinal))
            return;
        if (mediaOf(url[ownFile.Length..]) is { } found)
            holder[name] = found;
    }
}
