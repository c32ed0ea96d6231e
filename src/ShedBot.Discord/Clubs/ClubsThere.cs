using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The clubs that have us: those that took us in or sent us away, what we may do there, and what was written there while we were not told.</summary>
/// <param name="keepAfterLeaving">How long a club's data is kept once it has sent us away.</param>
internal sealed class ClubsThere(Parts parts, SetUp setUp, RightsCheck rights, CatchingUp catchingUp, TimeSpan keepAfterLeaving)
{
    /// <summary>Clubs of a session that was not resumed: what was written there meanwhile was not told to us.</summary>
    private readonly ConcurrentDictionary<ulong, bool> unheard = new();

    /// <summary>A session that was not resumed.</summary>
    public async Task BeginFreshAsync(Ready ready, CancellationToken ct)
    {
        foreach (var guild in ready.Guilds) unheard[guild.Value] = true;
        await SentAwayMeanwhileAsync(ready, ct);
    }

    /// <summary>A session that is resumed does not tell of its clubs again, and what we may do there can have changed meanwhile.</summary>
    public async Task BeginResumedAsync(CancellationToken ct)
    {
        foreach (var club in await parts.Clubs.ClubsAsync(ct))
        {
            await CheckAsync(club, ct);
            // The process before may have lost a session and not have caught up.
            unheard[Names.Guild(club.Id).Value] = true;
            await HearHelpChannelAsync(club, ct);
        }
    }

    /// <summary>Reads what was missed, where it could not be read so far.</summary>
    public async Task HearAsync(CancellationToken ct)
    {
        if (unheard.IsEmpty) return;
        foreach (var club in await parts.Clubs.ClubsAsync(ct)) await HearHelpChannelAsync(club, ct);
    }

    public async Task ThereAsync(Guild guild, CancellationToken ct)
    {
        if (guild.Unavailable == true) return;
        var id = Names.Club(guild.Id);
        var known = await parts.Clubs.FindClubAsync(id, ct);
        if (known is null or { LeftAt: not null }) known = await setUp.ChangeAsync(id, c => c with { LeftAt = null }, save: true, ct);
        await CheckAsync(known, ct);
        await HearHelpChannelAsync(known, ct);
    }

    public async Task SentAwayAsync(ClubId club, CancellationToken ct)
    {
        await setUp.ChangeAsync(club, c => c with { LeftAt = parts.Clock.GetUtcNow() }, save: true, ct);
        parts.Log.SentAway(club.Value, keepAfterLeaving.TotalDays);
    }

    private async Task HearHelpChannelAsync(Club club, CancellationToken ct)
    {
        var guild = Names.Guild(club.Id).Value;
        if (club.LeftAt is not null || !unheard.TryRemove(guild, out _)) return;
        var heard = false;
        try
        {
            heard = await catchingUp.HelpChannelAsync(club, ct);
        }
        finally
        {
            if (!heard) unheard[guild] = true;
        }
    }

    /// <summary>A club that sends us away while nobody listens tells us by not being in the list any more.</summary>
    private async Task SentAwayMeanwhileAsync(Ready ready, CancellationToken ct)
    {
        foreach (var club in await parts.Clubs.ClubsAsync(ct))
        {
            var guild = Names.Guild(club.Id);
            if (club.LeftAt is null && (int)((guild.Value >> 22) % (ulong)ready.Shards) == ready.Shard && !ready.Guilds.Contains(guild)) await SentAwayAsync(club.Id, ct);
        }
    }

    private async Task CheckAsync(Club club, CancellationToken ct)
    {
        if (club.LeftAt is not null) return;
        if (club.HelpChannel is not { } help)
        {
            parts.Log.NotSetUp(club.Id.Value);
            return;
        }

        var missing = await rights.MissingAsync(club.Id, help, ct);
        if (!missing.IsEmpty) parts.Log.Lacks(club.Id.Value, string.Join(", ", missing));
    }
}
