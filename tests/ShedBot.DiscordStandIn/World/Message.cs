using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Interactions;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Message types of the platform that the stand-in makes.</summary>
internal static class MessageType
{
    public const int Default = 0, ThreadCreated = 18, Reply = 19, Command = 20, ThreadStarter = 21, MenuCommand = 23;
}

/// <summary>Message flag bits of the platform.</summary>
internal static class MessageFlags
{
    public const long SuppressEmbeds = 4, HasThread = 32, Ephemeral = 64, Loading = 128, SuppressNotifications = 4096, ComponentsV2 = 32768;
}

internal sealed class Message(ulong id, Channel channel, Person author)
{
    public ulong Id { get; } = id;

    public Channel Channel { get; } = channel;

    public Person Author { get; } = author;

    public int Type { get; set; }

    public string Content { get; set; } = "";

    public long Flags { get; set; }

    public JsonArray Components { get; set; } = [];

    public JsonArray Embeds { get; set; } = [];

    public List<Attachment> Attachments { get; set; } = [];

    public Pings Pings { get; set; } = Pings.Nobody;

    /// <summary>The message replied to, or that a thread's first message points at.</summary>
    public Message? Reference { get; set; }

    /// <summary>As the sender gave it, number or string.</summary>
    public JsonNode? Nonce { get; set; }

    public DateTimeOffset? EditedAt { get; set; }

    /// <summary>The interaction this message answers.</summary>
    public Interaction? Answers { get; set; }

    public bool Deleted { get; set; }

    public bool Pinned { get; set; }

    public Channel? StartedThread { get; set; }

    public Dictionary<string, HashSet<ulong>> Reactions { get; } = [];

    public List<Revision> Earlier { get; } = [];

    public bool Ephemeral => (Flags & MessageFlags.Ephemeral) != 0;

    public bool ComponentsV2 => (Flags & MessageFlags.ComponentsV2) != 0;

    /// <summary>A deferred answer nobody has filled in yet.</summary>
    public bool Loading => (Flags & MessageFlags.Loading) != 0;
}

/// <summary>What a message was before an edit.</summary>
internal sealed record Revision(string Content, string Components, string Embeds, int Attachments, DateTimeOffset ReplacedAt);

/// <summary>A file on a message, bytes kept.</summary>
internal sealed record Attachment(ulong Id, string FileName, string ContentType, string? Description, byte[] Bytes);

/// <summary>Whom a message rang for when it was sent.</summary>
internal sealed record Pings(IReadOnlyList<ulong> People, IReadOnlyList<ulong> Roles, bool Everyone)
{
    public static readonly Pings Nobody = new([], [], false);
}
