using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;

namespace ShedBot.Discord.Clubs;

/// <summary>Takes a press or a form that was sent in to whoever drew it.</summary>
internal sealed class PressRouting(Leaving leaving, ReminderPresses reminders, Logbooks logbooks, BikeSheets sheets, Offers offers, Commanding commanding, Pressing pressing)
{
    public async Task HandleAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        switch (CustomId.Read(came.Interaction.Data?.CustomId))
        {
            case { Verb: Leaving.Verb }:
                await leaving.ForgetAsync(came.Interaction, live, ct);
                break;
            case { } reminder when ReminderIds.Is(reminder.Verb):
                await reminders.HandleAsync(came, reminder, live, ct);
                break;
            case { Verb: Logbooks.Verb } garage:
                await logbooks.AnswerAsync(came, garage, live, ct);
                break;
            case { } sheet when BikeSheets.Is(sheet.Verb):
                await sheets.HandleAsync(came, sheet, live, ct);
                break;
            case { Verb: Offers.Verb } offer:
                if (!await offers.AcceptAsync(came, offer.Rest, live, ct)) await live.ShowFormAsync(Forms.Trouble(false), ct);
                break;
            case { Verb: CustomId.Form, Case.Value: Forms.NoCase } form:
                var (@private, bike) = Forms.TroubleOf(form);
                await commanding.TroubleAsync(came, Forms.WordsOf(came.Interaction) ?? "", @private, bike, live, ct);
                break;
            case { } known:
                await pressing.HandleAsync(came, known, live, ct);
                break;
            default:
                await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
                break;
        }
    }
}
