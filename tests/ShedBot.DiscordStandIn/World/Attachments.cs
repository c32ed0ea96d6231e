using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Files on messages: how they are told, where their bytes are served and what a picture's size is.</summary>
internal static class Attachments
{
    private static ReadOnlySpan<byte> PngSignature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    public static JsonObject Render(Realm realm, Message m, Attachment a)
    {
        var json = new JsonObject
        {
            ["id"] = a.Id.Text(),
            ["filename"] = a.FileName,
            ["size"] = a.Bytes.Length,
            ["url"] = Url(realm, m, a),
            ["proxy_url"] = Url(realm, m, a),
            ["content_type"] = a.ContentType,
            ["flags"] = 0,
        };
        if (a.Description is not null)
            json["description"] = a.Description;
        if (m.Ephemeral)
            json["ephemeral"] = true;
        if (PictureSize(a.Bytes) is var (width, height))
        {
            json["width"] = width;
            json["height"] = height;
        }
        return json;
    }

    /// <summary>A file that came with a command.</summary>
    public static JsonObject Render(Realm realm, SentFile file)
    {
        var issued = realm.Now.ToUnixTimeSeconds();
        var url = file.ToldAddress ?? string.Create(CultureInfo.InvariantCulture,
            $"{realm.Address}/ephemeral-attachments/{realm.ApplicationId}/{file.Id}/{Uri.EscapeDataString(file.Name)}?ex={issued + 86400:x}&is={issued:x}&hm=00");
        return new JsonObject
        {
            ["id"] = file.Id.Text(),
            ["filename"] = file.Name,
            ["size"] = file.ToldSize ?? file.Bytes.Length,
            ["url"] = url,
            ["proxy_url"] = url,
            ["content_type"] = file.ContentType,
            ["flags"] = 0,
            ["ephemeral"] = true,
        };
    }

    /// <summary>A file as a component or an embed shows it.</summary>
    public static JsonObject AsMedia(Realm realm, Message m, Attachment a)
    {
        var size = PictureSize(a.Bytes);
        return new JsonObject
        {
            ["id"] = a.Id.Text(),
            ["url"] = Url(realm, m, a),
            ["proxy_url"] = Url(realm, m, a),
            ["width"] = size?.Width,
            ["height"] = size?.Height,
            ["content_type"] = a.ContentType,
            ["attachment_id"] = a.Id.Text(),
        };
    }

    /// <summary>A signed address that runs out after a day, as the platform's do; the stand-in checks the expiry, not the signature.</summary>
    public static string Url(Realm realm, Message m, Attachment a)
    {
        var issued = realm.Now.ToUnixTimeSeconds();
        return string.Create(CultureInfo.InvariantCulture,
            $"{realm.Address}/attachments/{m.Channel.Id}/{a.Id}/{Uri.EscapeDataString(a.FileName)}?ex={issued + 86400:x}&is={issued:x}&hm=00");
    }

    /// <summary>Pixels of a PNG, from its header chunk (PNG specification, section 11.2.1); null for anything else.</summary>
    private static (int Width, int Height)? PictureSize(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 24 && bytes.StartsWith(PngSignature)
            ? (BinaryPrimitives.ReadInt32BigEndian(bytes[16..]), BinaryPrimitives.ReadInt32BigEndian(bytes[20..]))
            : null;
}
