namespace ShedBot.Discord.Wire;

/// <summary>Numbers of the platform's published description, version 10; rate limits are not among them, they come with each answer.</summary>
internal static class Limits
{
    public const int ApiVersion = 10;

    public const int CustomId = 100, ButtonLabel = 80, ButtonsInRow = 5, SelectOptions = 25, SelectText = 100;

    /// <summary>Components of one message, nested ones counted.</summary>
    public const int Components = 40;

    /// <summary>Characters over all text of a message made of components. The platform takes 4,000, and has been seen to fail above some 10,000 bytes: we stop before.</summary>
    public const int PanelText = 3500, PanelTextBytes = 9000;

    public const int ThreadName = 100, Nonce = 25, AltText = 1024;

    public const int FileBytes = 10 * 1024 * 1024;

    /// <summary>Seconds from an interaction to its first answer, and minutes that its token lives.</summary>
    public const int AnswerSeconds = 3, TokenMinutes = 15;

    public const int GatewayPayloadBytes = 4096, GatewaySends = 120, GatewaySendSeconds = 60;

    public const int HistoryPage = 100;
}

/// <summary>Bits of <see cref="MessageBody.Flags"/>.</summary>
internal static class MessageFlags
{
    public const int Ephemeral = 64, ComponentsV2 = 32768;
}

internal static class ChannelTypes
{
    public const int Text = 0, Dm = 1, AnnouncementThread = 10, PublicThread = 11, PrivateThread = 12, Forum = 15, Media = 16;

    public static bool IsThread(int type) => type is AnnouncementThread or PublicThread or PrivateThread;

    public static bool IsForum(int type) => type is Forum or Media;
}

/// <summary>Bits of what a member or bot may do.</summary>
[Flags]
internal enum Rights : ulong
{
    None = 0,
    Administrator = 1UL << 3,
    ManageGuild = 1UL << 5,
    ViewChannel = 1UL << 10,
    SendMessages = 1UL << 11,
    EmbedLinks = 1UL << 14,
    AttachFiles = 1UL << 15,
    ReadMessageHistory = 1UL << 16,
    ManageThreads = 1UL << 34,
    CreatePublicThreads = 1UL << 35,
    CreatePrivateThreads = 1UL << 36,
    SendMessagesInThreads = 1UL << 38,
}

/// <summary>What we ask the gateway to send. None is privileged.</summary>
[Flags]
internal enum Intents
{
    Guilds = 1,
    GuildMessages = 512,
    DirectMessages = 4096,
    Ours = Guilds | GuildMessages | DirectMessages,
}
