using System.Net;
using System.Net.Http.Headers;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Rest;

/// <summary>A request that can be written any number of times.</summary>
/// <param name="Json">Its body; null for none.</param>
/// <param name="Try">For one try.</param>
/// <param name="Patience">For all together.</param>
internal sealed record Outgoing(
    Route Route, ReadOnlyMemory<byte>? Json, IReadOnlyList<Upload> Files, Repeat Repeat, TimeSpan Try, TimeSpan Patience)
{
    // Neither words nor a token may get into a log by way of a whole record.
    public override string ToString() => Route.ToString();

    public HttpRequestMessage Write(BotToken token)
    {
        var request = new HttpRequestMessage(Route.Method, Route.Path) { Content = Content() };
        if (!Route.OfInteraction)
            request.Headers.Authorization = new AuthenticationHeaderValue("Bot", token.Reveal());
        return request;
    }

    /// <remarks>Source: the platform's description, reference, "Uploading Files".</remarks>
    private HttpContent? Content()
    {
        if (Json is not { } json)
            return null;
        var body = new ReadOnlyMemoryContent(json);
        body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        if (Files.Count == 0)
            return body;
        body.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = "\"payload_json\"" };
        var parts = new MultipartFormDataContent { body };
        for (var n = 0; n < Files.Count; n++)
        {
            var part = new ReadOnlyMemoryContent(Files[n].Bytes);
            part.Headers.ContentType = new MediaTypeHeaderValue(Files[n].MediaType);
            part.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = $"\"files[{n}]\"", FileName = $"\"{Files[n].Name}\"" };
            parts.Add(part);
        }

        return parts;
    }
}

/// <summary>An answer, read to its end.</summary>
internal sealed record Answer(HttpStatusCode Status, HttpResponseHeaders Headers, ReadOnlyMemory<byte> Body)
{
    public bool Good => (int)Status is >= 200 and < 300;

    // The body may hold a member's words.
    public override string ToString() => $"HTTP {(int)Status}";
}
