using System.Collections.Concurrent;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Direct conversations with members, opened slowly: whoever opens many at once is shut out of opening for hours. How many are too many is not published;
/// one in ten seconds, and three at once, is our own choice.
/// </summary>
internal sealed class DirectChannels(Parts parts)
{
    private const int AtOnce = 3;

    private static readonly TimeSpan Each = TimeSpan.FromSeconds(10), TooFast = TimeSpan.FromHours(3);

    private readonly Lock gate = new();
    private readonly ConcurrentDictionary<ulong, Snowflake> open = new();
    private DateTimeOffset next;

    /// <summary>A conversation that the member has used is open.</summary>
    public void Remember(Snowflake person, Snowflake channel) => open[person.Value] = channel;

    /// <summary>It is not there any more.</summary>
    public void Forget(Snowflake person) => open.TryRemove(person.Value, out _);

    /// <returns>Null when no more may be opened just now.</returns>
    public async Task<Snowflake?> OpenAsync(Snowflake person, CancellationToken ct)
    {
        if (open.TryGetValue(person.Value, out var known)) return known;
        if (!MayOpen()) return null;
        try
        {
            return open[person.Value] = (await parts.Rest.OpenDmAsync(person, ct)).Id;
        }
        catch (DiscordException e) when (e.Trouble == Trouble.DmsTooFast)
        {
            lock (gate) next = parts.Clock.GetUtcNow() + TooFast;
            parts.Log.OpensTooFast(TooFast.TotalHours, e);
            return null;
        }
    }

    private bool MayOpen()
    {
        lock (gate)
        {
            var now = parts.Clock.GetUtcNow();
            var from = next < now ? now : next;
            if (from - now > Each * (AtOnce - 1)) return false;
            next = from + Each;
            return true;
        }
    }
}
