using System.Text.Json;

namespace ShedBot.DiscordStandIn.Rest;

/// <summary>One request, and what came of it.</summary>
/// <param name="Number">From 1, in order of arrival.</param>
/// <param name="Route">Template without the version; the path itself when no route fits.</param>
/// <param name="Body">The JSON of the request; null when there was none.</param>
/// <param name="Parts">All parts of a multipart body with their bytes.</param>
/// <param name="Status">HTTP status; 0 when the link was cut without an answer.</param>
/// <param name="Answer">The body answered, as text.</param>
/// <param name="Fault">The injected fault that befell it; null when none did.</param>
public sealed record LoggedRequest(
    int Number,
    DateTimeOffset At,
    string Method,
    string Route,
    string Path,
    IReadOnlyDictionary<string, string> Query,
    IReadOnlyDictionary<string, string> Headers,
    JsonElement? Body,
    IReadOnlyList<LoggedPart> Parts,
    int Status,
    string? Answer,
    Faults.FaultKind? Fault);

/// <summary>One part of a multipart body, bytes kept.</summary>
public sealed record LoggedPart(string Name, string FileName, string ContentType, ReadOnlyMemory<byte> Bytes);

/// <summary>Something the client did that the platform's rules or the strict checks forbid.</summary>
/// <param name="Where">Method and route, or <c>gateway</c>.</param>
public sealed record Violation(string Where, string What);
