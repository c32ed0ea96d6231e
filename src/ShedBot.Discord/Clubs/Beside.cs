using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// What goes along with a command or a press in a club, for the member alone: they have been heard of; once, the question whether to remind them; the
/// note that a reminder did not reach them; and what became of their tips, where that cannot be written to them.
/// </summary>
internal sealed class Beside(Parts parts, WordDelivery words)
{
    /// <param name="noted">True where something was noted that can fall due.</param>
    /// <param name="mayShow">False where the answer is a form, or changes a message that others see.</param>
    public async Task AfterAsync(InteractionCame came, bool noted, bool mayShow, Acknowledgement live, CancellationToken ct)
    {
        if (came.Interaction is not { GuildId.IsNone: false, Who: { } who }) return;
        var club = Names.Club(came.Interaction.GuildId);
        var member = club.Member(who.Id.ToString());
        await parts.Riders.HeardAsync(member, came.At, ct);
        if (!mayShow) return;
        await words.TellBesideAsync(member, live, ct);
        if (await parts.Riders.BesideAsync(member, noted, came.At, ct) is not { } card) return;
        await live.TellAsync(CardDrawing.Single([card], ReminderControls.Of(club, card), null, null, AllowedMentions.None), ct);
    }
}
