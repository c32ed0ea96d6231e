namespace ShedBot.DiscordStandIn.World;

/// <summary>Permission bits, with the platform's own values (its permission table).</summary>
[Flags]
public enum Rights : ulong
{
    None = 0,
    Administrator = 1UL << 3,
    ManageChannels = 1UL << 4,
    ManageGuild = 1UL << 5,
    AddReactions = 1UL << 6,
    ViewChannel = 1UL << 10,
    SendMessages = 1UL << 11,
    ManageMessages = 1UL << 13,
    EmbedLinks = 1UL << 14,
    AttachFiles = 1UL << 15,
    ReadMessageHistory = 1UL << 16,
    MentionEveryone = 1UL << 17,
    UseApplicationCommands = 1UL << 31,
    ManageThreads = 1UL << 34,
    CreatePublicThreads = 1UL << 35,
    CreatePrivateThreads = 1UL << 36,
    SendMessagesInThreads = 1UL << 38,
    PinMessages = 1UL << 51,

    /// <summary>What an invite of a bot that keeps rooms asks for: 377957239872.</summary>
    Invited = ViewChannel | SendMessages | EmbedLinks | AttachFiles | ReadMessageHistory | AddReactions
        | CreatePublicThreads | CreatePrivateThreads | SendMessagesInThreads,

    /// <summary>What an ordinary member may do.</summary>
    Ordinary = Invited | UseApplicationCommands,

    All = (1UL << 53) - 1,
}
