using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>Where a session is kept while no process runs, so that the next one is told what was missed.</summary>
internal interface ISessionShelf
{
    /// <returns>Null when nothing is kept that can be read.</returns>
    SavedSession? Read(int shard);

    /// <param name="session">Null: there is none to go on with.</param>
    void Write(int shard, SavedSession? session);
}

/// <param name="Sequence">Up to here every event has been dealt with.</param>
/// <param name="Shards">Into how many the clubs were divided; a session of another division is of no use.</param>
internal sealed record SavedSession(
    string SessionId,
    Uri ResumeUrl,
    long Sequence,
    DateTimeOffset SavedAt,
    int Shards,
    Snowflake Me,
    Snowflake Application,
    IReadOnlyList<Snowflake> Guilds)
{
    /// <summary>The platform keeps a session for some minutes; after this long there is no use in asking.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    public bool IsWorthTrying(DateTimeOffset now, int shards) => Shards == shards && now - SavedAt < Longest;
}

/// <summary>Keeps nothing: each start begins a new session.</summary>
internal sealed class NoSessionShelf : ISessionShelf
{
    public SavedSession? Read(int shard) => null;

    public void Write(int shard, SavedSession? session)
    {
    }
}
