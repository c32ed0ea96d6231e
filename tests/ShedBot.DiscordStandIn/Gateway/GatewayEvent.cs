using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Something to tell every session that asked for it.</summary>
/// <param name="Intents">A session hears it when it has one of these bits; none means every session.</param>
/// <param name="GuildId">Decides the shard; without it, shard 0.</param>
/// <param name="Message">Set when <paramref name="Data"/> is a message whose words may have to be blanked.</param>
internal sealed record GatewayEvent(string Name, long Intents, JsonObject Data, ulong? GuildId, ulong? ChannelId, Message? Message);
