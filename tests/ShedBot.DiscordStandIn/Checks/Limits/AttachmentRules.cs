using System.Globalization;
using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>How a message speaks of its files. Source: the platform's API reference, "Uploading files", and its component reference; that
/// every picture of ours carries words for those who cannot see it is our own rule.</summary>
internal static class AttachmentRules
{
    private const string Scheme = "attachment://";

    // Ids of files sent before are snowflakes, far above any number of a part.
    private const long LeastSnowflake = 1L << 22;
    private static readonly string[] Pictures = [".png", ".jpg", ".jpeg", ".webp", ".gif"];

    public static IEnumerable<string> Of(Message message)
    {
        var listed = message.Body.Items("attachments");
        var files = new Dictionary<long, string?>();
        foreach (var part in message.Parts)
            if (FileRules.Number(part) is { } number) files[number] = part.FileName;
        return
        [
            .. Bounds.Count(message.Body, "attachments", 0, 10, message.At),
            .. listed.Index().SelectMany(item => Listed(item.Item, files, message, $"{message.At}attachments[{item.Index}].")),
            .. message.Ours ? files.Keys.Where(file => listed.All(item => Id(item) != file)).Select(file => $"{message.At}attachments: files[{file}] is not listed") : [],
            .. Pointing(message, [.. files.Values.OfType<string>(), .. listed.Select(item => item.Text("filename")).OfType<string>()]),
        ];
    }

    private static IEnumerable<string> Listed(JsonElement item, Dictionary<long, string?> files, Message message, string at)
    {
        foreach (var reason in Bounds.Length(item, "description", 0, 1024, at)) yield return reason;
        if (Id(item) is not { } id)
        {
            yield return $"{at}id: is needed";
            yield break;
        }

        var isNew = files.TryGetValue(id, out var sent);
        if (!isNew && (message.IsNew || id < LeastSnowflake)) yield return $"{at}id: no part files[{id}] was sent";
        if (isNew && item.Text("filename") is { } named && named != sent) yield return $"{at}filename: the part is called '{sent}'";
        if (isNew && message.Ours && IsPicture(sent) && string.IsNullOrWhiteSpace(item.Text("description")))
            yield return $"{at}description: a picture needs words for those who cannot see it";
    }

    /// <summary>What the message points at must have been sent; and a message of components only hides every file it does not point at.</summary>
    private static IEnumerable<string> Pointing(Message message, IReadOnlyCollection<string> names)
    {
        var pointed = Strings(message.Body).Where(text => text.StartsWith(Scheme, StringComparison.Ordinal)).Select(text => text[Scheme.Length..]).ToHashSet(StringComparer.Ordinal);
        if (message.IsNew)
            foreach (var missing in pointed.Except(names)) yield return $"{message.At}attachments: '{missing}' is pointed at but not sent";
        if (message.NewStyle is true)
            foreach (var hidden in names.Distinct(StringComparer.Ordinal).Except(pointed)) yield return $"{message.At}attachments: nothing points at '{hidden}', so nobody would see it";
    }

    private static long? Id(JsonElement item) =>
        item.Whole("id") ?? (long.TryParse(item.Text("id"), NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : null);

    private static bool IsPicture(string? name) => Pictures.Any(ending => name?.EndsWith(ending, StringComparison.OrdinalIgnoreCase) is true);

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => [element.GetString()!],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property => Strings(property.Value)),
        _ => [],
    };
}
