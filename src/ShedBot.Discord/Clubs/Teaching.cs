using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// A club's own rules, looked after in the chat. Whatever comes in may be forged, late, or by somebody who may no longer: the rights of each act are those
/// that came with it, and the desk asks for them before anything is read or done.
/// </summary>
/// <param name="aside">Does work in a lane of its own.</param>
internal sealed class Teaching(Parts parts, TeachingTrials trials, TeachingShow show, WordDelivery words, LearningKeeper learning, Action<Snowflake, Func<Task>> aside)
{
    private readonly TeachingDoor door = new(parts.Teaching);
    private readonly TeachingCommanding commanding = new(parts);
    private readonly TeachingLeads leads = new(parts.Teaching);

    public async Task HandleAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        var (used, data) = (came.Interaction, came.Interaction.Data!);
        if (await door.TeacherAsync(used, ct) is not { } teacher)
        {
            await live.TellAsync(Texts.Draw(Texts.OnlyInClub), ct);
            return;
        }

        var sub = data.Options?.FirstOrDefault(o => o.Type == OptionTypes.SubCommand);
        var (request, instead) = data.Name switch
        {
            TeachingCommands.Tip => TeachingTips.Own(used),
            TeachingCommands.PassOn => TeachingTips.PassedOn(used, teacher),
            _ when sub is not null => await commanding.ReadAsync(used, sub, teacher, ct),
            _ => (null, null),
        };
        if (request is null) await live.TellAsync(instead ?? Texts.Draw(Texts.NotMineAnyMore), ct);
        else await ActAsync(came, teacher, request, live, ct);
    }

    /// <summary>A control of a teaching card was used, or one of its forms was sent in.</summary>
    public async Task UseAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        var data = came.Interaction.Data;
        if (await door.TeacherAsync(came.Interaction, ct) is not { } teacher)
        {
            await live.TellAsync(Texts.Draw(Texts.OnlyInClub), ct);
            return;
        }

        var id = CustomId.Read(data?.CustomId);
        switch (id?.Verb)
        {
            case TeachingIds.Open:
                await OpenAsync(came, teacher, id.Value, live, ct);
                break;
            case TeachingIds.Told:
                await ActAsync(came, teacher, new AnswerSheet(id.Value.Case.Value, TeachingForms.Answers(came.Interaction)), live, ct);
                break;
            case TeachingIds.Why:
                await PressAsync(came, teacher, TeachingIds.Press(id.Value.Rest)?.With(TeachingForms.ReasonOf(came.Interaction)), live, ct);
                break;
            default:
                var press = TeachingIds.Press(id?.Verb == TeachingIds.Pick ? TeachingIds.Picked(data) : data?.CustomId);
                // Without words it changes nothing: the desk says who may.
                if (press is { WantsWords: true } && press.With("") is { } wanted && teacher.May(wanted.Needs)) await live.ShowFormAsync(TeachingForms.Reason(press), ct);
                else await PressAsync(came, teacher, press is { WantsWords: true } ? press.With("") : press?.Request, live, ct);
                break;
        }
    }

    private async Task PressAsync(InteractionCame came, Teacher teacher, TeachRequest? request, Acknowledgement live, CancellationToken ct)
    {
        if (request is null) await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
        else await ActAsync(came, teacher, request, live, ct);
    }

    /// <summary>The form of a page, with what was answered before in it.</summary>
    private async Task OpenAsync(InteractionCame came, Teacher teacher, CustomId id, Acknowledgement live, CancellationToken ct)
    {
        var open = await parts.Rules.HandleAsync(teacher, new GoOn(id.Case.Value, id.Rest), came.At, ct);
        if (open is { Refused: null, Sheet: { } sheet, Question: { } question, Proposal: { } proposal }) await live.ShowFormAsync(TeachingForms.Of(proposal.Id, sheet, question), ct);
        else await show.ShowAsync(open, null, live, ct);
    }

    private async Task ActAsync(InteractionCame came, Teacher teacher, TeachRequest request, Acknowledgement live, CancellationToken ct)
    {
        // What a process that died has left is done only where it loses words otherwise: nobody sees what comes of it, and time has gone by.
        if (came.Interaction.Token.Length == 0 && request is not (PassTip or AnswerSheet or TryOut)) return;
        if (request is TryOut or ShowReport or CountRequest && teacher.May(request.Needs))
        {
            await trials.BeginAsync(came, teacher, request, live, ct);
            return;
        }

        var answer = await parts.Rules.HandleAsync(teacher, request, came.At, ct);
        await show.ShowAsync(answer, await leads.OfAsync(teacher, request, answer, ct), live, ct);
        if (answer.Refused is null) learning.After(request, teacher.Club);
        if (request is Publish or Refuse or DeclineTip && answer.Refused is null) aside(came.Interaction.Id, () => words.RoundAsync(ct));
    }
}
