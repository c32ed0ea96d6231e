using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Answers to reminders. The message that was pressed on shows what came of it and what is still due, so that a conversation holds one message for each
/// reminder. Whoever presses answers for themselves alone, whatever the control says.
/// </summary>
internal sealed class ReminderPresses(Parts parts, DirectChannels direct, ShownTrouble shown, Logbooks logbooks)
{
    /// <summary>Where an entry is taken back, since direct conversations have no command for it.</summary>
    private const string TakeBack = "-# In the club, /service undo takes the last entry back.";

    public async Task HandleAsync(InteractionCame came, CustomId id, Acknowledgement live, CancellationToken ct)
    {
        var press = came.Interaction;
        var club = new ClubId(id.Case.Value);
        if (press.Who is not { } who || await ReadAsync(press, club, who, id, ct) is not { } answer)
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return;
        }

        var member = club.Member(who.Id.ToString());
        if (press.GuildId.IsNone) direct.Remember(who.Id, press.ChannelId);
        switch (id.Verb)
        {
            case ReminderIds.Back:
                await parts.Riders.HeardAsync(member, came.At, ct);
                await ShowAsync(press, club, [await parts.Riders.StandingAsync(member, answer, came.At, ct) ?? Texts.NothingDue], null, null, live, ct);
                break;
            case ReminderIds.Answer when answer.Verb == NudgeVerb.NotRiding:
                await live.ShowFormAsync(Forms.TillWhen(ReminderIds.Of(ReminderIds.Rest, club, answer)), ct);
                break;
            case ReminderIds.Rest:
                await RestAsync(came, club, member, answer, live, ct);
                break;
            default:
                await AnswerAsync(came, club, member, answer, live, ct);
                break;
        }
    }

    /// <returns>The answer; null when the club or the member is not known (any more), or it says nothing.</returns>
    private async Task<NudgeAnswer?> ReadAsync(Interaction press, ClubId club, User who, CustomId id, CancellationToken ct)
    {
        var text = press.Data?.Values is [var picked, ..] ? picked : id.Rest;
        if (NudgeAnswer.Read(text) is not { } answer || Names.Guild(club).IsNone || await parts.Clubs.FindClubAsync(club, ct) is not { LeftAt: null }) return null;
        // In a club the platform vouches for the member; in a direct conversation only who is kept as one of the club's counts.
        var member = club.Member(who.Id.ToString());
        if (press.GuildId.IsNone ? (await parts.Riders.FindAsync(member, ct)).Version == 0 : press.GuildId != Names.Guild(club)) return null;
        return ReminderIds.InFull(answer, await parts.Store.BikesOfAsync(member, ct), (await parts.Coaches.OfAsync(member, ct)).Knowledge);
    }

    private async Task RestAsync(InteractionCame came, ClubId club, MemberId member, NudgeAnswer answer, Acknowledgement live, CancellationToken ct)
    {
        var speaker = await logbooks.SpeakerAsync(club, member, ct);
        var rest = BikeForms.Rest(Forms.WordsOf(came.Interaction), speaker, came.At);
        if (rest.Refused is { } refused)
        {
            var standing = await parts.Riders.StandingAsync(member, answer, came.At, ct);
            await ShowAsync(came.Interaction, club, [Texts.Plain("Not noted", refused.Say), .. Still(standing)], null, null, live, ct);
            return;
        }

        var taken = await parts.Riders.RestAsync(member, answer, (RestEntry)rest.Must, came.At, ct);
        await ShowAsync(came.Interaction, club, [taken.Say], null, null, live, ct);
    }

    private async Task AnswerAsync(InteractionCame came, ClubId club, MemberId member, NudgeAnswer answer, Acknowledgement live, CancellationToken ct)
    {
        var taken = await parts.Riders.AnswerAsync(member, answer, came.At, ct);
        if (taken.Opens is { } trouble)
        {
            await live.AnnounceAsync(ct);
            var (said, link) = await shown.OpenAsync(came, club, trouble, taken.Say, ct);
            await ShowAsync(came.Interaction, club, [said], answer, link, live, ct);
            return;
        }

        switch (answer.Verb)
        {
            case NudgeVerb.Look or NudgeVerb.HowTo or NudgeVerb.Trouble:
                await ShowAsync(came.Interaction, club, [taken.Say], answer, null, live, ct);
                break;
            case NudgeVerb.Agree or NudgeVerb.Decline or NudgeVerb.GoOn:
                await ShowAsync(came.Interaction, club, [taken.Say], null, null, live, ct);
                break;
            default:
                var standing = await parts.Riders.StandingAsync(member, answer, came.At, ct);
                await ShowAsync(came.Interaction, club, [taken.Say, .. Still(standing)], null, taken.Bikes.IsEmpty ? null : TakeBack, live, ct);
                break;
        }
    }

    private static ImmutableArray<Card> Still(Card? standing) => standing is null ? [] : [standing];

    /// <param name="back">The reminder to which a way back is shown, or null.</param>
    private async Task ShowAsync(
        Interaction press, ClubId club, ImmutableArray<Card> cards, NudgeAnswer? back, string? link, Acknowledgement live, CancellationToken ct)
    {
        // By its mark the message stays known, whatever it shows.
        var hidden = ((press.Message?.Flags ?? 0) & MessageFlags.Ephemeral) != 0;
        var drawn = CardDrawing.Single(
            cards, ReminderControls.Of(club, cards[^1], back is null ? null : back with { Bike = "", Subject = "" }), Panels.MarkOf(press.Message), link, AllowedMentions.None);
        // A message that others see is never changed for one of them.
        if (!hidden && !press.GuildId.IsNone) await live.TellAsync(drawn, ct);
        else if (!await live.ReplaceAsync(drawn, ct) && !hidden && press.Message is { } message) await ChangeAsync(press.ChannelId, message.Id, drawn, ct);
    }

    /// <summary>Too late for an answer, the message is changed through its channel; when that fails it stays as it was, and what was answered counts all the same.</summary>
    private async Task ChangeAsync(Snowflake channel, Snowflake message, Drawn drawn, CancellationToken ct)
    {
        try
        {
            await parts.Rest.EditMessageAsync(channel, message, drawn.Body, [], ct);
        }
        catch (DiscordException e) when (e.Trouble != Trouble.Busy)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }
    }
}
