namespace ShedBot.DiscordStandIn.World;

/// <summary>What a thread has beyond a channel.</summary>
public sealed class ThreadFacts
{
    internal ThreadFacts(Person owner, DateTimeOffset now)
    {
        Owner = owner;
        CreatedAt = now;
        ArchiveChangedAt = now;
    }

    public Person Owner { get; }

    public DateTimeOffset CreatedAt { get; }

    /// <summary>When the archived state last changed; the creation time before that.</summary>
    public DateTimeOffset ArchiveChangedAt { get; internal set; }

    public bool Archived { get; internal set; }

    public bool Locked { get; internal set; }

    public bool Invitable { get; internal set; } = true;

    /// <summary>60, 1440, 4320 or 10080 minutes.</summary>
    public int AutoArchiveMinutes { get; internal set; } = 4320;

    /// <summary>Seconds a member waits between messages; bots are exempt.</summary>
    public int SlowSeconds { get; internal set; }

    /// <summary>Messages ever sent here, the first message of a forum post and the one a thread hangs on not counted.</summary>
    public int TotalSent { get; internal set; }

    internal Dictionary<ulong, DateTimeOffset> Members { get; } = [];

    internal List<ulong> AppliedTags { get; } = [];
}
