using System.Text.Json.Serialization;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>What of the events only the gateway itself reads.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(HelloData))]
[JsonSerializable(typeof(ReadyData))]
[JsonSerializable(typeof(GoneData))]
[JsonSerializable(typeof(SavedSession))]
internal sealed partial class GatewayJson : JsonSerializerContext;

/// <param name="HeartbeatInterval">Milliseconds.</param>
internal sealed record HelloData(double? HeartbeatInterval = null);

internal sealed record ReadyData(
    User? User = null,
    Application? Application = null,
    IReadOnlyList<GoneData?>? Guilds = null,
    string? SessionId = null,
    string? ResumeGatewayUrl = null);

/// <summary>Something by its id: what is left to say of a thing that is gone.</summary>
internal sealed record GoneData(
    Snowflake Id = default,
    Snowflake ChannelId = default,
    Snowflake GuildId = default,
    bool? Unavailable = null,
    IReadOnlyList<Snowflake>? Ids = null);
