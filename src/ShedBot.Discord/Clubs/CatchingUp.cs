using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Finds the words that were written to us while nobody listened: in the threads of cases, and in the help channels. Presses are not missed that way: a
/// press that nobody took shows as failed, and the member presses again.
/// </summary>
internal sealed class CatchingUp(Parts parts, Rooms rooms, Saying saying, SetUp setUp)
{
    /// <summary>Of one channel; who wrote more while we were away is answered to the newest.</summary>
    private const int MostMessages = Limits.HistoryPage;

    /// <summary>Where the platform does not answer the rooms stay behind, and this is to be done again.</summary>
    public async Task RoomsAsync(CancellationToken ct)
    {
        var (missed, all) = (rooms.Missed, true);
        foreach (var club in await parts.Clubs.ClubsAsync(ct))
        {
            if (club.LeftAt is null) all &= await RoomsOfAsync(club, ct);
        }

        if (all) rooms.CatchUp(missed);
    }

    /// <summary>
    /// Looks through the threads that are active: words open an archived one again, so no thread with news in it is missing, also where the case
    /// in it is closed.
    /// </summary>
    private async Task<bool> RoomsOfAsync(Coaching.Clubs.Club club, CancellationToken ct)
    {
        var guild = Names.Guild(club.Id);
        IReadOnlyList<Channel> active;
        try
        {
            active = await parts.Rest.ActiveThreadsAsync(guild, ct);
        }
        catch (DiscordException e)
        {
            parts.Log.NotTidied(e.Trouble, e);
            return e.Trouble != Trouble.Busy;
        }

        var all = true;
        foreach (var thread in active)
        {
            if (await rooms.FindByThreadAsync(thread.Id, ct) is { State: not RoomState.Gone } room && Snowflake.Read(room.LastHeard) is { } last)
                all &= await ChannelAsync(thread.Id, guild, last, newest => rooms.ChangeAsync(room.Place, r => r with { LastHeard = newest.ToString() }, ct), ct);
        }

        return all;
    }

    /// <returns>False when the platform did not answer: this is to be done again.</returns>
    public async Task<bool> HelpChannelAsync(Coaching.Clubs.Club club, CancellationToken ct)
    {
        if (Snowflake.Read(club.HelpChannel) is { } channel && Snowflake.Read(club.LastHeard) is { } last)
            return await ChannelAsync(channel, Names.Guild(club.Id), last, newest => setUp.ChangeAsync(club.Id, c => c with { LastHeard = newest.ToString() }, save: true, ct), ct);
        return true;
    }

    private async Task<bool> ChannelAsync(Snowflake channel, Snowflake guild, Snowflake last, Func<Snowflake, Task> heard, CancellationToken ct)
    {
        try
        {
            var missed = (await parts.Rest.ListMessagesAsync(channel, last, MostMessages, ct)).OrderBy(m => m.Id).ToList();
            if (missed.Count == 0) return true;
            var toUs = missed.Where(m => m.Author is { IsBot: false } && m.Mentions?.Any(u => u.Id == parts.Me.User) == true).ToList();
            foreach (var message in toUs) await saying.HandleAsync(message with { GuildId = guild }, message.Id.At, ct);
            await heard(missed[^1].Id);
            if (toUs.Count > 0) parts.Log.CaughtUp(toUs.Count);
            return true;
        }
        catch (DiscordException e)
        {
            // A channel that may not be read is found out about again when something is to be said there.
            parts.Log.NotTidied(e.Trouble, e);
            return e.Trouble != Trouble.Busy;
        }
    }
}
