namespace ShedBot.DiscordStandIn.Driving;

/// <summary>A file that a person sends along with a command.</summary>
/// <param name="ToldSize">What the bot is told of its size; null: the truth. A forger's would differ.</param>
/// <param name="ToldAddress">Where the bot is told that it can be fetched; null: where it is served.</param>
public sealed record SentFile(ulong Id, string Name, string ContentType, ReadOnlyMemory<byte> Bytes, long? ToldSize = null, string? ToldAddress = null);
