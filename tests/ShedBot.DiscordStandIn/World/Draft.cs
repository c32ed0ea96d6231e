using System.Text.Json;
using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>A file as it came in a multipart part.</summary>
/// <param name="Part">Name of the part, such as <c>files[0]</c>.</param>
internal sealed record Upload(string Part, string FileName, string ContentType, byte[] Bytes);

/// <summary>A message somebody wants said, or what an edit wants changed: the body as it came, and the files.</summary>
internal sealed record Draft(JsonElement? Body, IReadOnlyList<Upload> Files)
{
    public static Draft Words(string text) => new(JsonSerializer.SerializeToElement(new JsonObject { ["content"] = text }), []);

    public string? Content => Body.Of("content").AsText();

    public long Flags => Body.Of("flags").AsNumber() ?? 0;

    public bool Has(string name) => Body.Of(name) is not null;
}

/// <summary>What a new message is besides what it says.</summary>
internal sealed record Setting
{
    public int? Type { get; init; }

    /// <summary>The interaction it answers.</summary>
    public Interactions.Interaction? Answers { get; init; }

    /// <summary>Flag bits the sender may set.</summary>
    public long SettableFlags { get; init; } = MessageFlags.SuppressEmbeds | MessageFlags.SuppressNotifications | MessageFlags.ComponentsV2;

    /// <summary>The message replied to, when the body does not say it.</summary>
    public Message? Reference { get; init; }

    /// <summary>An id that must be used: the first message of a forum post has its thread's.</summary>
    public ulong? Id { get; init; }

    /// <summary>Whether an empty message may stand: a deferred answer.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>The first message of a forum post is not counted.</summary>
    public bool Uncounted { get; init; }
}
