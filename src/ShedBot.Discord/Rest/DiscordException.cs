using System.Net;

namespace ShedBot.Discord.Rest;

/// <summary>What a refusal of the platform means for us.</summary>
internal enum Trouble
{
    /// <summary>Our own mistake, or data that went stale: sending it again does not help.</summary>
    OurRequest,

    /// <summary>The bot's token is not taken (any more): nothing works until the operator has seen to it.</summary>
    Token,

    /// <summary>The interaction is too old, or was answered before: speak through the channel instead.</summary>
    InteractionOver,

    /// <summary>The interaction had its first answer already.</summary>
    AlreadyAnswered,

    /// <summary>A permission is missing, or one cannot write in such a channel: a moderator has to see to it.</summary>
    Forbidden,

    /// <summary>The member takes no direct messages from us, or cannot.</summary>
    DmRefused,

    /// <summary>Direct conversations were opened too fast: no more for hours.</summary>
    DmsTooFast,

    /// <summary>The message is gone, or takes no more changes: send a new one.</summary>
    MessageGone,

    /// <summary>The channel, thread, club or member is gone.</summary>
    Gone,

    /// <summary>The thread is archived: open it and try again.</summary>
    Archived,

    /// <summary>The thread is locked, there are too many threads, or the forum wants a tag: only a moderator can help.</summary>
    Locked,

    /// <summary>The words, a file or the link to an earlier message were not taken: say it without.</summary>
    ContentRefused,

    /// <summary>Limits, or the platform is down: later.</summary>
    Busy,
}

/// <summary>The platform said no, or could not be reached. Holds no member's words and no token.</summary>
/// <param name="status">0 when no answer came.</param>
/// <param name="code">The platform's own number, or 0.</param>
internal sealed class DiscordException(Trouble trouble, HttpStatusCode status, int code, string route, string message, Exception? inner = null)
    : Exception($"{route}: {message} (HTTP {(int)status}, code {code})", inner)
{
    public Trouble Trouble => trouble;

    public HttpStatusCode Status => status;

    public int Code => code;

    public string Route => route;
}
