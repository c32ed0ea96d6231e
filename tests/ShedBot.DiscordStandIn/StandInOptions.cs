using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

/// <summary>How strict and how quick the stand-in is. The defaults are the platform's documented numbers, except where a comment says otherwise.</summary>
public sealed record StandInOptions
{
    /// <summary>0 takes a free port.</summary>
    public int Port { get; init; }

    /// <summary>Time of ids, deadlines and limits. Waiting inside faults and tests runs on the real clock.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    public string Token { get; init; } = "invented.token.of-nobody";

    /// <summary>Told in the greeting. A client silent for two and a half of these is closed with 4009 (the factor is the stand-in's own).</summary>
    public TimeSpan HeartbeatInterval { get; init; } = TimeSpan.FromMilliseconds(41250);

    /// <summary>Privileged intent bits switched on for the application; by default none, so asking closes with 4014.</summary>
    public long AllowedPrivilegedIntents { get; init; }

    /// <summary>Least time between identifies, else op 9 false. The platform's is 5 s; 0 here, so that tests are quick.</summary>
    public TimeSpan IdentifyInterval { get; init; } = TimeSpan.Zero;

    /// <summary>How long a session without a socket can be resumed. The platform says "a few minutes".</summary>
    public TimeSpan SessionLife { get; init; } = TimeSpan.FromMinutes(3);

    /// <summary>How long after op 7 the socket is closed. The platform says "a few seconds".</summary>
    public TimeSpan ReconnectGrace { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Path of <c>resume_gateway_url</c>; differs from the ordinary one so that a test sees which was used.</summary>
    public string ResumePath { get; init; } = "/resume/";

    /// <summary>Time for the first answer to an interaction; later ones get 10062.</summary>
    public TimeSpan AnswerWithin { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Life of an interaction's token; later requests get 401 and 50027.</summary>
    public TimeSpan TokenLife { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>Requests of one bucket and top resource per <see cref="BucketWindow"/>. The platform's differ and are secret; messages were seen to be 5 in 5 s (from memory).</summary>
    public int BucketLimit { get; init; } = 100;

    public TimeSpan BucketWindow { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Requests per second over all routes but those of interactions. The platform's is 50; 0 means no limit.</summary>
    public int GlobalLimit { get; init; }

    /// <summary>New direct channels per ten minutes before 40003; 0 means no limit. The platform's is secret.</summary>
    public int MostDirectOpens { get; init; }

    /// <summary>Active threads of a guild before 160006 (the number is from memory).</summary>
    public int MostActiveThreads { get; init; } = 1000;

    /// <summary>Rights of the bot's role in guilds it is added to.</summary>
    public Rights BotRights { get; init; } = Rights.Invited;

    /// <summary>Strict checks every request is held against, besides the stand-in's own rules.</summary>
    public IReadOnlyList<IRequestCheck> Checks { get; init; } = [];

    /// <summary>Whether the log of requests is kept; a benchmark may do without.</summary>
    public bool KeepLog { get; init; } = true;

    internal string ResumeAddress(string httpAddress) => "ws" + httpAddress["http".Length..] + ResumePath;
}
