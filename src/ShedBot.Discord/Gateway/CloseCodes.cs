namespace ShedBot.Discord.Gateway;

/// <summary>How to go on after a connection has ended.</summary>
internal enum Next
{
    /// <summary>The session lives: take it up where it was left.</summary>
    Resume,

    /// <summary>The session may live: try once, then begin a new one.</summary>
    ResumeOnce,

    /// <summary>The session is dead, its sequence with it: begin a new one.</summary>
    Identify,

    /// <summary>Coming back is no use until the operator has changed something.</summary>
    Fatal,

    /// <summary>We were asked to stop.</summary>
    Stop,
}

/// <summary>What the platform's close codes mean for us.</summary>
/// <remarks>Source: the platform's public description, "Opcodes and status codes", gateway close event codes.</remarks>
internal static class CloseCodes
{
    /// <summary>Our own code for leaving with the session kept; 1000 and 1001 would end it.</summary>
    public const int KeepSession = 4000;

    public const int EndSession = 1000, BadToken = 4004;

    /// <param name="code">Null when the link was lost without one.</param>
    public static Next Meaning(int? code) => code switch
    {
        1000 or 1001 => Next.ResumeOnce,
        4003 or 4006 or 4007 or 4009 => Next.Identify, // 4006 is not listed any more: "session no longer valid" in older lists.
        4004 or (>= 4010 and <= 4014) => Next.Fatal,
        _ => Next.Resume,
    };

    /// <summary>We sent something that cannot be read, or twice: a mistake in this program.</summary>
    public static bool IsOurMistake(int? code) => code is 4001 or 4002 or 4005;

    /// <summary>Too much was sent: do not come back at once.</summary>
    public static TimeSpan Pause(int? code) => code == 4008 ? TimeSpan.FromSeconds(5) : TimeSpan.Zero;

    /// <summary>What the operator has to do; for codes that are <see cref="Next.Fatal"/>.</summary>
    public static string Advice(int code) => code switch
    {
        4004 => "The platform does not take the bot's token. Make a new one on the application's page of the platform, put it where ShedBot reads it, and start again. A token that was not used for 30 days, or was published, is switched off.",
        4010 => "The platform does not take this division into shards. Leave the number of shards out, so that the advised one is used, and start again.",
        4011 => "The bot is in too many clubs for one connection. Leave the number of shards out, so that the advised one is used, and start again.",
        4012 => "The platform no longer speaks the version of its protocol that this ShedBot uses. Install a newer ShedBot.",
        4013 => "The platform does not know one of the kinds of event that ShedBot asks for. Install a newer ShedBot, or take back a change to the kinds of event.",
        4014 => "ShedBot asks for events that the application may not have. On the application's page of the platform, under 'Bot', switch on what was asked for in the settings, or ask for less; ShedBot itself needs no privileged kind.",
        _ => $"The platform closed with code {code} and wants no new try.",
    };
}
