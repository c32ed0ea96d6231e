namespace ShedBot.DiscordStandIn.World;

/// <summary>Kinds of channel, with the platform's numbers.</summary>
public enum ChannelKind
{
    Text = 0,
    Direct = 1,
    Category = 4,
    Announcement = 5,
    AnnouncementThread = 10,
    PublicThread = 11,
    PrivateThread = 12,
    Forum = 15,
}

/// <summary>A place messages are in: a channel, a thread, a forum (whose messages are in its threads) or a direct channel.</summary>
public sealed class Channel
{
    internal Channel(ulong id, ChannelKind kind, string name, Guild? guild, Channel? parent)
    {
        Id = id;
        Kind = kind;
        Name = name;
        Guild = guild;
        Parent = parent;
    }

    public ulong Id { get; }

    public ChannelKind Kind { get; }

    public string Name { get; internal set; }

    /// <summary>Null for a direct channel.</summary>
    public Guild? Guild { get; }

    /// <summary>The channel a thread hangs on.</summary>
    public Channel? Parent { get; }

    /// <summary>The other side of a direct channel.</summary>
    public Person? Recipient { get; internal init; }

    /// <summary>Set when this is a thread.</summary>
    public ThreadFacts? Thread { get; internal init; }

    /// <summary>Whether the channel is gone.</summary>
    public bool Deleted { get; internal set; }

    /// <summary>Channel flag bits; 16 means a forum post needs a tag.</summary>
    public long Flags { get; set; }

    internal List<ForumTag> Tags { get; } = [];

    internal List<Overwrite> Overwrites { get; } = [];

    internal List<Message> Messages { get; } = [];

    internal IEnumerable<Message> Standing => Messages.Where(m => !m.Deleted);

    internal Message? Find(ulong id) => Messages.Find(m => m.Id == id && !m.Deleted);
}

/// <summary>A tag posts of a forum may carry.</summary>
public sealed record ForumTag(ulong Id, string Name, bool Moderated = false);

/// <summary>Rights given to or taken from one role or member in one channel.</summary>
/// <param name="TargetId">A role's id (the guild's own id means everyone) or a person's.</param>
public sealed record Overwrite(ulong TargetId, bool IsPerson, Rights Allow, Rights Deny);
