using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>A session with the platform, which outlives connections and, on a shelf, the process.</summary>
internal sealed class Session
{
    private readonly HashSet<Snowflake> guilds;
    private readonly Lock gate = new();

    public Session(string id, Uri resumeUrl, User me, Snowflake application, IEnumerable<Snowflake> guilds, long sequence)
    {
        Id = id;
        ResumeUrl = resumeUrl;
        Me = me;
        Application = application;
        this.guilds = [.. guilds];
        Progress = new Progress(sequence);
    }

    public string Id { get; }

    public Uri ResumeUrl { get; }

    public User Me { get; }

    public Snowflake Application { get; }

    public Progress Progress { get; }

    public static Session From(SavedSession saved) =>
        new(saved.SessionId, saved.ResumeUrl, new User(saved.Me, Bot: true), saved.Application, saved.Guilds, saved.Sequence);

    public IReadOnlyList<Snowflake> Guilds()
    {
        lock (gate)
            return [.. guilds];
    }

    /// <summary>Keeps the list of clubs right: a fresh start is told of all, a resumed one of none.</summary>
    public void Note(GatewayEvent happened)
    {
        lock (gate)
        {
            if (happened is GuildThere there)
                guilds.Add(there.Guild.Id);
            else if (happened is GuildGone { Outage: false } gone)
                guilds.Remove(gone.Guild);
        }
    }

    public SavedSession Save(DateTimeOffset now, int shards) =>
        new(Id, ResumeUrl, Progress.Safe, now, shards, Me.Id, Application, Guilds());
}
