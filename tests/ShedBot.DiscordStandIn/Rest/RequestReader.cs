using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>A request's body, read: JSON, the files, and all parts as they came.</summary>
internal sealed record ReadBody(string Text, JsonElement? Json, IReadOnlyList<Upload> Files, IReadOnlyList<Upload> Parts)
{
    public static readonly ReadBody None = new("", null, [], []);
}

/// <summary>Reads a body: nothing, JSON, or multipart with the JSON in a part that may come first or last.</summary>
internal static class RequestReader
{
    /// <summary>Most bytes of a whole request, as the platform has it.</summary>
    public const long MostBytes = 25 * 1024 * 1024;

    public static async Task<ReadBody> ReadAsync(HttpRequest request, CancellationToken ct)
    {
        using var copy = new MemoryStream();
        await request.Body.CopyToAsync(copy, ct).ConfigureAwait(false);
        if (copy.Length == 0)
            return ReadBody.None;
        if (copy.Length > MostBytes)
            throw Refusal.TooLarge();
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type))
            throw Refusal.BadForm("a body needs a content type");
        if (type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase))
        {
            var text = Encoding.UTF8.GetString(copy.GetBuffer(), 0, (int)copy.Length);
            return new ReadBody(text, Parsed(text), [], []);
        }
        if (!type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase))
            throw Refusal.BadForm($"content type {type.MediaType} is not taken");
        copy.Position = 0;
        return await PartsAsync(HeaderUtilities.RemoveQuotes(type.Boundary).ToString(), copy, ct).ConfigureAwait(false);
    }

    private static async Task<ReadBody> PartsAsync(string boundary, Stream body, CancellationToken ct)
    {
        var parts = new List<Upload>();
        var reader = new MultipartReader(boundary, body);
        try
        {
            while (await reader.ReadNextSectionAsync(ct).ConfigureAwait(false) is { } section)
                parts.Add(await PartAsync(section, ct).ConfigureAwait(false));
        }
        catch (Exception e) when (e is IOException or InvalidDataException)
        {
            throw Refusal.BadForm("the parts cannot be read");
        }
        var json = parts.Find(p => p.Part == "payload_json");
        var text = json is null ? "" : Encoding.UTF8.GetString(json.Bytes);
        return new ReadBody(text, json is null ? null : Parsed(text), [.. parts.Where(p => p.Part.StartsWith("file", StringComparison.Ordinal))], parts);
    }

    private static async Task<Upload> PartAsync(MultipartSection section, CancellationToken ct)
    {
        if (!ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var disposition))
            throw Refusal.BadForm("a part needs a content disposition");
        using var bytes = new MemoryStream();
        await section.Body.CopyToAsync(bytes, ct).ConfigureAwait(false);
        var fileName = disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName;
        return new Upload(
            HeaderUtilities.RemoveQuotes(disposition.Name).ToString(),
            HeaderUtilities.RemoveQuotes(fileName).ToString(),
            section.ContentType ?? "application/octet-stream",
            bytes.ToArray());
    }

    private static JsonElement Parsed(string text)
    {
        try
        {
            using var parsed = JsonDocument.Parse(text);
            return parsed.RootElement.Clone();
        }
        catch (JsonException)
        {
            throw new Refusal(400, 50109, "The request body contains invalid JSON.");
        }
    }
}
