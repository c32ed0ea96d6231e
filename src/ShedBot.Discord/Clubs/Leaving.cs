using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>A member has everything removed that is kept of them; from within a club what belongs to it, from a direct conversation all of it.</summary>
internal sealed class Leaving(Parts parts, LearningKeeper learning)
{
    public const string Verb = "forget";

    public static Drawn Ask() => Texts.Draw(Texts.Forget).WithButton(new CustomId(Verb, new CaseId(Forms.NoCase), "yes"), "Remove all of it");

    public async Task ForgetAsync(Interaction press, Acknowledgement live, CancellationToken ct)
    {
        if (press.Who is not { } who) return;
        await live.AnnounceAsync(ct);
        IEnumerable<ClubId> clubs = press.GuildId.IsNone ? (await parts.Clubs.ClubsAsync(ct)).Select(c => c.Id) : [Names.Club(press.GuildId)];
        var (cases, bikes) = (0, 0);
        foreach (var club in clubs)
        {
            var member = club.Member(who.Id.ToString());
            foreach (var room in await parts.Clubs.RoomsOfAsync(member, 100, ct)) await PutAwayAsync(room, ct);
            var forgotten = await parts.Clubs.ForgetMemberAsync(member, ct);
            (cases, bikes) = (cases + forgotten.Cases, bikes + forgotten.Bikes);
            // What the club has learnt is counted anew without them.
            learning.Soon(club);
        }

        parts.Log.Forgot(cases, bikes);
        await live.ReplaceAsync(Texts.Draw(Texts.Forgotten(cases, bikes)), ct);
    }

    /// <summary>Only tidying: what is kept is removed whether or not the thread can be put away.</summary>
    private async Task PutAwayAsync(Room room, CancellationToken ct)
    {
        if (!room.OwnThread || room.State != RoomState.Open || Snowflake.Read(room.Thread) is not { } thread) return;
        try
        {
            await parts.Rest.EditChannelAsync(thread, new ChannelEdit(Archived: true), ct);
        }
        catch (DiscordException e)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }
    }
}
