using System.Text.Json;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The ways a message body travels; each has its own rules for flags and what must be there.</summary>
internal enum Sending
{
    /// <summary>A new message in a channel, thread or direct message.</summary>
    New,

    /// <summary>The first message of a forum post.</summary>
    ForumStart,

    /// <summary>The answer to an interaction, or a further message after it.</summary>
    Answer,

    /// <summary>A change to a message that is there already.</summary>
    Edit,
}

/// <summary>One message body and what it came with.</summary>
/// <param name="Parts">The parts of the multipart request it came in; empty when it came alone.</param>
/// <param name="Ours">Whether our own habits are asked for too.</param>
/// <param name="At">Where in the request's body it stands, with a full stop behind; empty when it is the body.</param>
internal sealed record Message(JsonElement Body, Sending How, IReadOnlyList<CheckedPart> Parts, bool Ours, string At)
{
    public const long NewStyleFlag = 1 << 15;

    public long Flags => Body.Whole("flags") ?? 0;

    public bool IsNew => How is not Sending.Edit;

    /// <summary>Built of components only: true or false where the request tells, null where only the message being edited would.</summary>
    public bool? NewStyle =>
        (Flags & NewStyleFlag) != 0 ? true
        : IsNew || Body.Text("content") is { Length: > 0 } || Body.Items("embeds").Count > 0 ? false
        : null;

    /// <summary>Whether it carries words that could call somebody.</summary>
    public bool Speaks =>
        Body.Text("content") is { Length: > 0 } || Body.Items("embeds").Count > 0 || Body.Items("components").Count > 0;
}
