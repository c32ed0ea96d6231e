namespace ShedBot.Discord.Rest;

/// <summary>When a request may be sent again although nobody knows whether the first one was taken.</summary>
internal enum Repeat
{
    /// <summary>Only when it certainly never left us.</summary>
    Unsent,

    /// <summary>Once: a second one is refused by the platform, but there is no time for more.</summary>
    Once,

    /// <summary>A few times with growing pauses: twice does no more than once.</summary>
    Safe,
}

/// <summary>Where a request goes, and which limits it falls under.</summary>
/// <param name="Template">The path without its ids; the only part that is ever logged.</param>
/// <param name="Path">The path with its ids, perhaps with an interaction's token; relative, without a slash in front.</param>
/// <param name="Resource">The channel, club or interaction whose limits count; empty where there is none.</param>
/// <param name="OfInteraction">It goes by the interaction's own token: without ours, and outside the global limit.</param>
internal sealed record Route(HttpMethod Method, string Template, string Path, string Resource, bool OfInteraction = false)
{
    public string Name { get; } = $"{Method} {Template}";

    // A whole record must not carry the token into a log.
    public override string ToString() => Name;
}
