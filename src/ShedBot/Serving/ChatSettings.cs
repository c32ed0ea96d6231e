using ShedBot.Discord.Running;

namespace ShedBot.Serving;

/// <summary>
/// How ShedBot lives in the chat: the section <c>Discord</c>, or <c>SHEDBOT_DISCORD__TOKENFILE</c> and the like. The token itself is not
/// among it, so that nothing which shows settings can show it: see <see cref="TokenSource"/>.
/// </summary>
internal sealed class ChatSettings
{
    public const string Section = "Discord";
    public const int MostShards = 1000;

    /// <summary>The platform's HTTP side; another one only for tests.</summary>
    public string Api { get; set; } = Usual.Api.AbsoluteUri;

    /// <summary>Where to connect instead of where the platform says; empty in ordinary use.</summary>
    public string Gateway { get; set; } = "";

    /// <summary>A page, or a mailto address, where the operator of this bot can be found.</summary>
    public string Operator { get; set; } = "";

    /// <summary>1 to 1000; left out: as many as the platform advises.</summary>
    public int? Shards { get; set; }

    public bool Compress { get; set; }

    /// <summary>The id of the one club in which commands are registered while trying things out; empty: in all.</summary>
    public string RegisterIn { get; set; } = "";

    /// <summary>How long a club's data is kept after it has sent ShedBot away, days; 0 to 365.</summary>
    public double KeepDaysAfterLeaving { get; set; } = Usual.KeepDaysAfterLeaving;

    /// <summary>Where the session is kept while no process runs; empty: the folder 'session' beside the data file.</summary>
    public string SessionFolder { get; set; } = "";

    /// <summary>The data file was restored from a backup: what the chat's newest reminders told is not told again. Does no harm when it stays on; it costs two requests a member.</summary>
    public bool Restored { get; set; }

    private static DiscordSettings Usual { get; } = new();

    /// <summary>To be called once they were found good.</summary>
    public DiscordSettings ToDiscord(string version, string dataFolder) => new()
    {
        Api = new Uri(Api),
        Gateway = Gateway.Length > 0 ? new Uri(Gateway) : null,
        Operator = Operator.Length > 0 ? new Uri(Operator) : Usual.Operator,
        Version = version,
        Shards = Shards,
        Compress = Compress,
        RegisterIn = RegisterIn.Length > 0 ? RegisterIn : null,
        KeepDaysAfterLeaving = KeepDaysAfterLeaving,
        Restored = Restored,
        SessionFolder = SessionFolder.Length > 0 ? Path.GetFullPath(SessionFolder) : Path.Combine(dataFolder, "session"),
    };
}
