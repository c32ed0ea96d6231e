using System.Text.Json;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Driving;

/// <summary>A message as it stood at one moment; a later edit does not change it.</summary>
/// <param name="Words">All text that shows in the message: the content, or the words of its text displays, one a line.</param>
/// <param name="Parts">Its components, numbered as the platform numbers them.</param>
/// <param name="RangFor">People the message rang for when it was sent.</param>
/// <param name="RangForRoles">Roles it rang for.</param>
/// <param name="RangForEveryone">Whether it rang for everyone.</param>
/// <param name="Earlier">What it said before each edit, oldest first.</param>
/// <param name="ReplyTo">Id of the message it replies to.</param>
public sealed record SeenMessage(
    ulong Id,
    ulong ChannelId,
    ulong AuthorId,
    int Type,
    string Content,
    string Words,
    long Flags,
    JsonElement Parts,
    JsonElement Embeds,
    IReadOnlyList<SeenFile> Files,
    IReadOnlyList<SeenControl> Controls,
    IReadOnlyList<ulong> RangFor,
    IReadOnlyList<ulong> RangForRoles,
    bool RangForEveryone,
    IReadOnlyList<SeenRevision> Earlier,
    ulong? ReplyTo,
    string? Nonce,
    bool Deleted,
    bool Pinned,
    IReadOnlyList<string> Reactions)
{
    /// <summary>Shown to one member only.</summary>
    public bool Private => (Flags & MessageFlags.Ephemeral) != 0;

    /// <summary>A deferred answer not filled in yet.</summary>
    public bool Waiting => (Flags & MessageFlags.Loading) != 0;

    /// <summary>Buttons and menus that can be used.</summary>
    public IEnumerable<SeenControl> Usable => Controls.Where(c => !c.Disabled && c.CustomId is not null);

    /// <summary>The usable control of that label, without regard to case; fails loudly with what there is.</summary>
    public SeenControl Control(string label) =>
        Usable.FirstOrDefault(c => string.Equals(c.Label, label, StringComparison.OrdinalIgnoreCase))
        ?? throw new InvalidOperationException($"No usable control '{label}' on message {Id}; there are: {string.Join(", ", Usable.Select(c => c.Label))}.");

    internal static SeenMessage Of(Message m) => new(
        m.Id, m.Channel.Id, m.Author.Id, m.Type, m.Content, MessageDesk.WordsOf(m), m.Flags, m.Components.Frozen(), m.Embeds.Frozen(),
        [.. m.Attachments.Select(a => new SeenFile(a.Id, a.FileName, a.ContentType, a.Description, a.Bytes))],
        [.. ComponentTree.All(m.Components).Select(SeenControl.Of).OfType<SeenControl>()],
        m.Pings.People, m.Pings.Roles, m.Pings.Everyone,
        [.. m.Earlier.Select(e => new SeenRevision(e.Content, e.Components, e.Embeds, e.Attachments, e.ReplacedAt))],
        m.Reference?.Id, m.Nonce?.ToString(), m.Deleted, m.Pinned, [.. m.Reactions.Where(r => r.Value.Count > 0).Select(r => r.Key)]);
}

/// <summary>A file on a message, with its bytes.</summary>
/// <param name="Description">The words for those who cannot see it.</param>
public sealed record SeenFile(ulong Id, string FileName, string ContentType, string? Description, ReadOnlyMemory<byte> Bytes);

/// <summary>What a message was before an edit; components and embeds as JSON text, files counted.</summary>
public sealed record SeenRevision(string Content, string Components, string Embeds, int Files, DateTimeOffset ReplacedAt);
