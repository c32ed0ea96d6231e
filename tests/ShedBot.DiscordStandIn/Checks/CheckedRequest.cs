using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks;

/// <summary>One request as a check sees it.</summary>
/// <param name="Method">GET, POST, PUT, PATCH or DELETE.</param>
/// <param name="Route">The path's template as the published description of the platform spells it, without the version:
/// <c>/channels/{channel_id}/messages/{message_id}</c>.</param>
/// <param name="Path">The path as it came, without the version, percent-encoding undone.</param>
/// <param name="Query">Query parameters; of a repeated one the last value.</param>
/// <param name="Body">The JSON body, or the <c>payload_json</c> part of a multipart one; null when there is none.</param>
/// <param name="Parts">All parts of a multipart body, <c>payload_json</c> included, in the order they came; empty for a plain body.</param>
/// <param name="Headers">Request headers, names without regard to case.</param>
public sealed record CheckedRequest(
    string Method,
    string Route,
    string Path,
    IReadOnlyDictionary<string, string> Query,
    JsonElement? Body,
    IReadOnlyList<CheckedPart> Parts,
    IReadOnlyDictionary<string, string> Headers);

/// <summary>One part of a multipart body.</summary>
/// <param name="Length">Bytes.</param>
public sealed record CheckedPart(string Name, string? FileName, long Length);
