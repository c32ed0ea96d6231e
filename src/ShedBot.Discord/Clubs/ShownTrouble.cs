using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>A service task has shown trouble: a case is opened with it in the club's help channel, as /trouble would.</summary>
internal sealed class ShownTrouble(Parts parts, Starting starting)
{
    /// <param name="said">What is said when a case was opened.</param>
    /// <returns>What to say, and the thread as the platform links it.</returns>
    public async Task<(Card Say, string? Link)> OpenAsync(InteractionCame came, ClubId club, TroubleShown trouble, Card said, CancellationToken ct)
    {
        var press = came.Interaction;
        if (await parts.Clubs.FindClubAsync(club, ct) is not { HelpChannel: { } help } || Snowflake.Read(help) is not { } channel) return (Texts.NoHelpChannel, null);
        var wish = new StartWish(club, press.Who!.Id, People.NameOf(press.Member, press.Who), press.Id, "", channel, default, default, false, came.At)
        {
            Known = new TroubleFound(Names.OpeningEvent(press.Id), trouble.Bike, trouble.Complaint),
        };
        var started = await starting.StartAsync(wish, null, ct);
        return started switch
        {
            { Room.Thread: { } thread } => (said, $"<#{thread}>"),
            { Instead: [var instead, ..] } => (instead with { Options = [] }, started.Link),
            _ => (Texts.SoonSaid, null),
        };
    }
}
