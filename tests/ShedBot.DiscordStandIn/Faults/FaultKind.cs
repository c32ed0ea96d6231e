namespace ShedBot.DiscordStandIn.Faults;

/// <summary>What can go wrong on purpose.</summary>
public enum FaultKind
{
    /// <summary>The link is cut after an event, without a close.</summary>
    DroppedSocket,

    /// <summary>The head and half of a frame, then the link is cut.</summary>
    HalfFrame,

    /// <summary>Op 7 after an event.</summary>
    Reconnect,

    /// <summary>Op 7 even before the greeting.</summary>
    ReconnectBeforeHello,

    /// <summary>Op 9 true after an event: the session may be resumed.</summary>
    InvalidSessionKept,

    /// <summary>Op 9 false after an event: the session is gone.</summary>
    InvalidSessionLost,

    /// <summary>One heartbeat is not acknowledged.</summary>
    SwallowedAck,

    /// <summary>An identify is answered with op 9 false.</summary>
    IdentifyRefused,

    /// <summary>A resume is answered with op 9 false.</summary>
    ResumeRefused,

    /// <summary>An event comes twice, with two numbers.</summary>
    DuplicatedEvent,

    /// <summary>An event comes after a later one of another channel.</summary>
    ReorderedEvents,

    /// <summary>An event comes late.</summary>
    DelayedEvent,

    /// <summary>An event nobody has heard of comes first.</summary>
    UnknownEvent,

    /// <summary>Objects carry a field nobody has heard of; in events and answers.</summary>
    UnknownFields,

    /// <summary>Optional fields are null; in events and answers.</summary>
    NullFields,

    /// <summary>429 of scope user.</summary>
    RateLimitedUser,

    /// <summary>429 of scope shared.</summary>
    RateLimitedShared,

    /// <summary>429 of scope global.</summary>
    RateLimitedGlobal,

    /// <summary>429 with headers only.</summary>
    RateLimitedWithoutBody,

    /// <summary>500 with the platform's JSON, nothing done.</summary>
    ServerErrorJson,

    /// <summary>502 with a page of HTML, nothing done.</summary>
    ServerErrorHtml,

    /// <summary>502 although the request was carried out.</summary>
    ServerErrorAfterHandling,

    /// <summary>The answer comes late; the request was carried out at once.</summary>
    SlowAnswer,

    /// <summary>The link is cut, nothing done.</summary>
    DroppedBeforeHandling,

    /// <summary>The link is cut although the request was carried out.</summary>
    DroppedAfterHandling,

    /// <summary>The link is cut in the middle of the answer.</summary>
    DroppedMidBody,
}
