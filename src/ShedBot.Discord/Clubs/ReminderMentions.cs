using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The one mention of a member who cannot be written to, in the place that they chose. Where it cannot be made, a note at their next command takes its place.</summary>
internal sealed class ReminderMentions(Parts parts, Panels panels)
{
    /// <param name="doubt">It may have been made before without our knowing.</param>
    public async Task MakeAsync(Rider rider, ClubId club, OutboxMessage message, bool doubt, CancellationToken ct)
    {
        try
        {
            if (await MayAsync(rider, club, ct) is { } channel) await PostAsync(rider, channel, message, doubt, ct);
            else await parts.Riders.NotMentionedAsync(rider.Member, ct);
        }
        catch (DiscordException e) when (ReminderDelivery.IsRefusal(e) || e.Trouble is Trouble.Locked or Trouble.Archived or Trouble.ContentRefused)
        {
            parts.Log.NotMentioned(e.Trouble);
            await parts.Riders.NotMentionedAsync(rider.Member, ct);
        }
    }

    /// <returns>The channel, when it is one of the club and the member is in the club still.</returns>
    private async Task<Snowflake?> MayAsync(Rider rider, ClubId club, CancellationToken ct)
    {
        if (Snowflake.Read(rider.Place) is not { } place || (await parts.Rest.GetChannelAsync(place, ct)).GuildId != Names.Guild(club)) return null;
        await parts.Rest.GetMemberAsync(Names.Guild(club), Names.Person(rider.Member), ct);
        return place;
    }

    private async Task PostAsync(Rider rider, Snowflake channel, OutboxMessage message, bool doubt, CancellationToken ct)
    {
        var mark = Names.Mark(message.Id);
        if (doubt && await panels.FindAsync(channel, mark, ct) is not null) return;
        var person = Names.Person(rider.Member);
        var drawn = CardDrawing.Single([message.Card], [], mark, $"<@{person}>", AllowedMentions.User(person));
        await parts.Rest.PostMessageAsync(channel, drawn.Body with { Nonce = Names.Nonce(message.Id), EnforceNonce = true }, [], ct);
    }
}
