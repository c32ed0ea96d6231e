using ShedBot.Coaching;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>A member's wishes about reminders, by command. All of it is said to the member alone.</summary>
internal sealed class Reminders(Parts parts)
{
    public async Task HandleAsync(InteractionCame came, CommandOptionValue sub, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        if (used.Who is not { } who || used.GuildId.IsNone)
        {
            await live.TellAsync(Texts.Draw(Texts.OnlyInClub), ct);
            return;
        }

        if (Read(sub, used) is not { } read)
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return;
        }

        if (read.Refused is { } refused)
        {
            await live.TellAsync(Texts.Draw(Texts.Plain("Not changed", refused.Say)), ct);
            return;
        }

        var club = Names.Club(used.GuildId);
        var member = club.Member(who.Id.ToString());
        var card = await parts.Riders.HandleAsync(member, read.Must, came.At, ct);
        var place = (await parts.Riders.FindAsync(member, ct)).Place;
        var link = place is null ? null : $"-# When I cannot write to you, I mention you once in <#{place}>, without a word of your bike.";
        await live.TellAsync(CardDrawing.Single([card], ReminderControls.Of(club, card), null, link, AllowedMentions.None), ct);
    }

    /// <summary>Offers the zones that fit what is typed so far, or the tasks that were stopped.</summary>
    public async Task SuggestAsync(Interaction used, Acknowledgement live, CancellationToken ct)
    {
        var typed = used.Data?.Options?.SelectMany(o => o.Options ?? []).FirstOrDefault(o => o.Focused == true);
        IEnumerable<CommandChoice> choices = typed?.Name == ClubCommands.Task
            ? await StoppedAsync(used, typed.Text ?? "", ct)
            : RiderForms.Zones(typed?.Text ?? "").Select(z => new CommandChoice(z, z)).Prepend(new CommandChoice("the club's", "club"));
        await live.OfferAsync([.. choices.Take(Limits.SelectOptions)], ct);
    }

    private async Task<IEnumerable<CommandChoice>> StoppedAsync(Interaction used, string typed, CancellationToken ct)
    {
        if (used.Who is not { } who || used.GuildId.IsNone) return [];
        var member = Names.Club(used.GuildId).Member(who.Id.ToString());
        var rider = await parts.Riders.FindAsync(member, ct);
        var rules = (await parts.Coaches.OfAsync(member, ct)).Knowledge.Service;
        return rider.Stopped.Select(id => new CommandChoice(TextRuns.Cut(rules.GetValueOrDefault(id)?.Called ?? id, Limits.SelectText), id))
            .Where(c => c.Name.Contains(typed.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    /// <returns>Null for a command that was never ours.</returns>
    private static Result<RiderRequest>? Read(CommandOptionValue sub, Interaction used) => sub.Name switch
    {
        ClubCommands.Show => (RiderRequest)new ShowReminders(),
        ClubCommands.On => RiderForms.On(Text(sub, ClubCommands.Time)),
        ClubCommands.Off => (RiderRequest)new RemindMeNoMore(),
        ClubCommands.Quiet => RiderForms.Quiet(Text(sub, ClubCommands.Hours) ?? ""),
        ClubCommands.Zone => RiderForms.Zone(Text(sub, ClubCommands.City) ?? ""),
        ClubCommands.Again => (RiderRequest)new HearAgain(Text(sub, ClubCommands.Task)),
        ClubCommands.Place => (RiderRequest)new MentionMe(
            Text(sub, ClubCommands.Nowhere) is "True" or "true" ? null : Text(sub, ClubCommands.Channel) ?? used.ChannelId.ToString()),
        _ => (Result<RiderRequest>?)null,
    };

    private static string? Text(CommandOptionValue sub, string name) => sub.Options?.FirstOrDefault(o => o.Name == name)?.Text;
}
