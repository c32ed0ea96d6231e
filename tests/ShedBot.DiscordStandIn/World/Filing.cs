using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Puts uploaded files on a message, and points embeds at them.</summary>
internal static class Filing
{
    private const int MostFiles = 10, MostBytes = 10 * 1024 * 1024;

    /// <summary>A new message gets what was uploaded. An edit keeps what its <c>attachments</c> list (all, without a list) and adds what was uploaded.</summary>
    public static List<Attachment> Take(Realm realm, Message message, Draft draft, bool edit)
    {
        var listed = draft.Body.Of("attachments").AsItems().ToList();
        var kept = new List<Attachment>();
        if (edit)
        {
            var ids = listed.Select(l => l.Of("id").AsId()).ToHashSet();
            kept.AddRange(message.Attachments.Where(a => !draft.Has("attachments") || ids.Contains(a.Id)));
        }
        kept.AddRange(draft.Files.Select(f => New(realm, f, listed)));
        RefuseMissing(listed, kept, draft.Files);
        if (kept.Count > MostFiles)
            throw Refusal.BadForm("attachments: at most 10");
        if (kept.Exists(a => a.Bytes.Length > MostBytes))
            throw Refusal.TooLarge();
        return kept;
    }

    public static JsonArray Embeds(JsonArray embeds, Func<string, JsonObject?> mediaOf)
    {
        const string ownFile = "attachment://";
        foreach (var embed in embeds.OfType<JsonObject>())
        {
            embed["type"] ??= "rich";
            foreach (var field in (embed["fields"] as JsonArray ?? []).OfType<JsonObject>())
                field["inline"] ??= false;
            foreach (var name in new[] { "image", "thumbnail" })
            {
                if (embed[name] is JsonObject picture && ComponentTree.TextOf(picture, "url") is { } url
                    && url.StartsWith(ownFile, StringComparison.Ordinal) && mediaOf(url[ownFile.Length..]) is { } found)
                    embed[name] = found;
            }
        }
        return embeds;
    }

    private static Attachment New(Realm realm, Upload file, List<JsonElement> listed)
    {
        var meta = listed.Find(l => l.Of("id").AsId() == NumberOf(file.Part));
        var said = meta.ValueKind == JsonValueKind.Object ? meta : (JsonElement?)null;
        return new Attachment(realm.Ids.Next(), said.Of("filename").AsText() ?? file.FileName, file.ContentType, said.Of("description").AsText(), file.Bytes);
    }

    private static ulong? NumberOf(string part) =>
        part.StartsWith("files[", StringComparison.Ordinal) && part.EndsWith(']')
        && ulong.TryParse(part.AsSpan()[6..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;

    private static void RefuseMissing(List<JsonElement> listed, List<Attachment> kept, IReadOnlyList<Upload> files)
    {
        foreach (var id in listed.Select(l => l.Of("id").AsId()))
        {
            if (id is not null && !kept.Exists(a => a.Id == id) && !files.Any(f => NumberOf(f.Part) == id))
                throw Refusal.BadForm($"attachments: no file for id {id}");
        }
    }
}
