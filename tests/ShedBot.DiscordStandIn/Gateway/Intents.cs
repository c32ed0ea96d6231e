using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Intent bits, and which an event needs.</summary>
internal static class Intents
{
    /// <summary>Needed by events that need none.</summary>
    public const long None = 0;

    public const long Guilds = 1, GuildMembers = 2, GuildPresences = 256, GuildMessages = 512, GuildReactions = 1024,
        DirectMessages = 4096, DirectReactions = 8192, MessageContent = 32768;

    public const long Privileged = GuildMembers | GuildPresences | MessageContent;

    /// <summary>All bits the platform knows (0-16, 20, 21, 24, 25); any other makes an identify invalid.</summary>
    public const long Known = 0x1FFFF | (3L << 20) | (3L << 24);

    public static long MessagesOf(Channel channel) => channel.Guild is null ? DirectMessages : GuildMessages;

    public static long ReactionsOf(Channel channel) => channel.Guild is null ? DirectReactions : GuildReactions;
}
