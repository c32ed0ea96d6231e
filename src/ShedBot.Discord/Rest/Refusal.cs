using System.Buffers;
using System.Net;
using System.Text.Json;

namespace ShedBot.Discord.Rest;

/// <summary>What can be read from the body of a refusal; nothing of it is taken for granted, and no sentence of it is kept, since it may quote a member.</summary>
/// <param name="Code">The platform's own number, or 0.</param>
/// <param name="Paths">Where in our request it saw what mistake, such as <c>components.0.label: BASE_TYPE_REQUIRED</c>; at most ten.</param>
/// <param name="RetryAfter">Of a 429.</param>
/// <param name="IsJson">False for a page of some machine in between.</param>
internal sealed record Refusal(int Code, string Paths, TimeSpan? RetryAfter, bool Global, bool IsJson)
{
    private const int MaxPaths = 10, MaxDepth = 16, MaxWord = 40;

    private static readonly Refusal Unread = new(0, "", null, false, false);
    private static readonly SearchValues<char> Plain = SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");

    public static Refusal Read(ReadOnlyMemory<byte> body)
    {
        try
        {
            using var json = JsonDocument.Parse(body);
            if (json.RootElement is not { ValueKind: JsonValueKind.Object } root)
                return Unread;
            var paths = new List<string>();
            if (root.TryGetProperty("errors", out var errors))
                Walk(errors, [], paths);
            var code = root.TryGetProperty("code", out var c) && c.ValueKind == JsonValueKind.Number && c.TryGetInt32(out var number) ? number : 0;
            var wait = root.TryGetProperty("retry_after", out var r) && r.ValueKind == JsonValueKind.Number && r.TryGetDouble(out var seconds)
                ? RateHeaders.Seconds(seconds)
                : null;
            return new Refusal(code, string.Join("; ", paths), wait, root.TryGetProperty("global", out var g) && g.ValueKind == JsonValueKind.True, true);
        }
        catch (JsonException)
        {
            return Unread;
        }
    }

    /// <summary>What to do about it, whatever the route.</summary>
    /// <remarks>Source: the platform's description, topics/opcodes-and-status-codes; 50007 and 50278 also from its public issue threads.</remarks>
    public static Trouble Judge(HttpStatusCode status, int code, bool ofInteraction) => code switch
    {
        _ when status == HttpStatusCode.TooManyRequests || (int)status >= 500 => code == 40003 ? Trouble.DmsTooFast : Trouble.Busy,
        _ when status == HttpStatusCode.Unauthorized => ofInteraction ? Trouble.InteractionOver : Trouble.Token,
        40001 or 50014 when !ofInteraction => Trouble.Token,
        10015 or 10062 or 40094 or 50027 => Trouble.InteractionOver,
        40060 => Trouble.AlreadyAnswered,
        40003 => Trouble.DmsTooFast,
        50007 or 50033 or 50278 => Trouble.DmRefused,
        10008 or 30046 => Trouble.MessageGone,
        10003 or 10004 or 10007 or 10013 => Trouble.Gone,
        50083 => Trouble.Archived,
        30047 or 30048 or 40061 or 40066 or 40067 or 160005 or 160006 => Trouble.Locked,
        40005 or 50045 or 50046 or 50110 or 50123 or 160002 or 200000 or 200001 or 240000 or 400001 => Trouble.ContentRefused,
        20016 or 20028 or 20029 or 40062 or 130000 => Trouble.Busy,
        40058 or 50001 or 50008 or 50013 or 50024 => Trouble.Forbidden,
        0 when status == HttpStatusCode.Forbidden => Trouble.Forbidden,
        0 when status == HttpStatusCode.NotFound => ofInteraction ? Trouble.InteractionOver : Trouble.Gone,
        _ => Trouble.OurRequest,
    };

    // Keys mirror our own request; at the leaves stand lists named "_errors". Source: reference, "Error Messages".
    private static void Walk(JsonElement at, IReadOnlyList<string> path, List<string> found)
    {
        if (at.ValueKind != JsonValueKind.Object || path.Count > MaxDepth)
            return;
        foreach (var part in at.EnumerateObject())
        {
            if (part.Name != "_errors")
            {
                Walk(part.Value, [.. path, Word(part.Name)], found);
                continue;
            }

            if (part.Value.ValueKind != JsonValueKind.Array)
                continue;
            foreach (var error in part.Value.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.Object && found.Count < MaxPaths))
                found.Add($"{string.Join('.', path)}: {(error.TryGetProperty("code", out var code) && code.ValueKind == JsonValueKind.String ? Word(code.GetString()!) : "?")}");
        }
    }

    private static string Word(string text) => text.Length is > 0 and <= MaxWord && !text.AsSpan().ContainsAnyExcept(Plain) ? text : "?";
}
