namespace ShedBot.DiscordStandIn.Checks;

/// <summary>Whose requests are being checked.</summary>
public enum Strictness
{
    /// <summary>Our own client: the platform's rules as published, every field known, and our own habits on top.</summary>
    Strict,

    /// <summary>Other people's clients: only what the platform is known to refuse. They send ids as numbers and fields the published
    /// description does not name, and the platform puts up with both.</summary>
    Lenient,
}
