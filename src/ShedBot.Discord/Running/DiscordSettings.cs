namespace ShedBot.Discord.Running;

/// <summary>How ShedBot lives on the platform. The token is not among it: it is handed over by itself and written down nowhere.</summary>
public sealed record DiscordSettings
{
    public const double LeastKeepDays = 0, MostKeepDays = 365;

    /// <summary>The platform's HTTP side, ending in a slash; another one only for tests.</summary>
    public Uri Api { get; init; } = new("https://discord.com/api/v10/");

    /// <summary>Where the platform keeps the files that members send, ending in a slash; files are fetched from nowhere else. Another one only for tests.</summary>
    public Uri Files { get; init; } = new("https://cdn.discordapp.com/");

    /// <summary>Where to connect instead of where the platform says; null in ordinary use.</summary>
    public Uri? Gateway { get; init; }

    /// <summary>Where the operator of this bot can be found: the platform asks every bot to say so.</summary>
    public Uri Operator { get; init; } = new("https://shedbot.invalid/");

    /// <summary>Of this program, as the platform is told.</summary>
    public string Version { get; init; } = "1.0.0";

    /// <summary>How many shards; null takes the number that the platform advises.</summary>
    public int? Shards { get; init; }

    /// <summary>Whether events come compressed: less to carry, more to compute.</summary>
    public bool Compress { get; init; }

    /// <summary>A folder in which the session is kept while no process runs, so that the next one is told what was missed; null: nowhere.</summary>
    public string? SessionFolder { get; init; }

    /// <summary>The id of the one club in which commands are registered while trying things out, there at once; null: in all clubs.</summary>
    public string? RegisterIn { get; init; }

    /// <summary>How long a club's data is kept after it has sent ShedBot away, days; 0 to 365.</summary>
    public double KeepDaysAfterLeaving { get; init; } = 30;

    /// <summary>
    /// The data file was restored from a backup: before a member is reminded, the newest reminder in the chat is looked for, so that nothing is told twice.
    /// </summary>
    public bool Restored { get; init; }

    /// <summary>How often it is told how far a trial of rules is.</summary>
    internal TimeSpan TrialTold { get; init; } = TimeSpan.FromSeconds(6);

    /// <summary>The clock of the gateway's pauses and beats, where tests want them quicker; null: the one of everything else.</summary>
    internal TimeProvider? GatewayClock { get; init; }
}
