using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Takes a command, a press, a form or what is being typed to whoever deals with it, and what goes along with it to the member after that.</summary>
internal sealed class Routing(
    PressRouting presses, Commanding commanding, Logbooks logbooks, Offers offers, Reminders reminders, SetUp setUp, Teaching teaching, TeachingOffers teachingOffers, Beside beside)
{
    /// <summary>Whether the answer is a form or choices, which cannot follow an announcement.</summary>
    public static bool AnswersWithForm(InteractionCame came)
    {
        var id = CustomId.Read(came.Interaction.Data?.CustomId);
        return came.Interaction.Type == InteractionTypes.Autocomplete
            || came.Interaction.Type == InteractionTypes.Component && TeachingIds.OpensForm(came.Interaction.Data)
            || came.Interaction.Type == InteractionTypes.Component && id is { } pressed && (pressed.Verb is CustomId.Words or BikeSheets.Open || ReminderIds.OpensForm(pressed))
            || came.Interaction.Type == InteractionTypes.Command && Commanding.AnswersWithForm(came.Interaction);
    }

    public async Task HandleAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        switch (used.Type)
        {
            case InteractionTypes.Command when TeachingCommands.Has(used.Data?.Name):
                await teaching.HandleAsync(came, live, ct);
                await beside.AfterAsync(came, noted: false, mayShow: true, live, ct);
                break;
            case InteractionTypes.Autocomplete when used.Data is { Name: TeachingCommands.Rules }:
                await teachingOffers.SuggestAsync(used, live, ct);
                break;
            case InteractionTypes.Component or InteractionTypes.ModalSubmit when TeachingIds.Is(used.Data?.CustomId):
                await teaching.UseAsync(came, live, ct);
                await beside.AfterAsync(came, noted: false, mayShow: false, live, ct);
                break;
            case InteractionTypes.Command when used.Data is { Type: CommandTypes.Message }:
                await offers.CoachThisAsync(came, live, ct);
                break;
            case InteractionTypes.Command when used.Data is { Name: ClubCommands.Club }:
                await setUp.HandleAsync(used, live, ct);
                break;
            case InteractionTypes.Command when used.Data is not null:
                var noted = await commanding.HandleAsync(came, live, ct);
                await beside.AfterAsync(came, noted, !Commanding.AnswersWithForm(used), live, ct);
                break;
            case InteractionTypes.Autocomplete when used.Data is { Name: ClubCommands.Reminders }:
                await reminders.SuggestAsync(used, live, ct);
                break;
            case InteractionTypes.Autocomplete:
                await logbooks.SuggestAsync(used, live, ct);
                break;
            case InteractionTypes.Component or InteractionTypes.ModalSubmit:
                await presses.HandleAsync(came, live, ct);
                await beside.AfterAsync(came, noted: false, mayShow: false, live, ct);
                break;
        }
    }
}
