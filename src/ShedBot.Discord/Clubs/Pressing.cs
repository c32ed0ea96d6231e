using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;

namespace ShedBot.Discord.Clubs;

/// <summary>A control of ours was used, or a form was sent in. Anybody who sees a message can press on it, twice, late, or send an id that was never ours: nothing here trusts what comes in.</summary>
internal sealed class Pressing(Parts parts, Rooms rooms, Turns turns, Panels panels, CaseEyes eyes)
{
    public async Task HandleAsync(InteractionCame came, CustomId id, Acknowledgement live, CancellationToken ct)
    {
        var press = came.Interaction;
        if (press.Who is not { } who
            || await parts.Store.FindCaseAsync(id.Case, ct) is not { } @case
            || await rooms.FindAsync(@case.Place, ct) is not { } room
            || room.Thread != press.ChannelId.ToString()
            || room.Club != Names.Club(press.GuildId))
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return;
        }

        if (!room.MayAnswer(room.Club.Member(who.Id.ToString())))
        {
            await live.TellAsync(Texts.Draw(Texts.NotYours, $"<@{Names.Person(room.Member)}>"), ct);
            return;
        }

        switch (id.Verb)
        {
            case CustomId.Answer:
                await ChooseAsync(came, room, @case, id.Rest, live, ct);
                break;
            case CustomId.Pick when press.Data?.Values is [var value, ..]:
                await ChooseAsync(came, room, @case, value, live, ct);
                break;
            case CustomId.Words:
                await live.ShowFormAsync(Forms.OwnWords(@case.Id, (await eyes.OpenQuestionAsync(@case, ct))?.Title ?? "What does the bike do?"), ct);
                break;
            case CustomId.Form when Forms.WordsOf(press) is { } words:
                await turns.TakeAsync(room, new MemberSaid(Names.PressEvent(press.Id, press.Message?.Id ?? default), words), live, null, came.At, ct);
                break;
            case CustomId.Think:
                await live.TellAsync(Texts.Draw(await eyes.BeliefAsync(@case, ct)), ct);
                break;
            default:
                await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
                break;
        }
    }

    private async Task ChooseAsync(InteractionCame came, Room room, Case @case, string option, Acknowledgement live, CancellationToken ct)
    {
        var press = came.Interaction;
        if (await eyes.AsideAsync(@case, option, ct) is { } aside)
        {
            await live.TellAsync(CardDrawing.Plain(aside, null, parts.Pictures), ct);
            return;
        }

        var eventName = Names.PressEvent(press.Id, press.Message?.Id ?? default);
        var current = await CurrentAsync(room, @case, ct);
        var offered = current.IsClosed || (await eyes.OpenQuestionAsync(current, ct))?.Options.Any(o => o.Id == option) == true || await eyes.OutdatesAsync(current, option, ct);
        if (current.Id == @case.Id && (offered || @case.Handled.Contains(eventName)))
        {
            await turns.TakeAsync(room, new MemberChose(eventName, option), live, null, came.At, ct);
            return;
        }

        // Late, or pressed twice: the case stands as it is, and what is over loses its controls.
        await live.TellAsync(Texts.Draw(current.IsClosed ? Texts.CaseClosed : Texts.AnsweredAlready), ct);
        if (press.Message is { } pressed && pressed.Id.ToString() != room.Panel) await panels.RetireAsync(pressed, press.ChannelId, ct);
    }

    private async Task<Case> CurrentAsync(Room room, Case pressed, CancellationToken ct) =>
        await parts.Store.FindLastCaseAsync(room.Member, room.Place, ct) ?? pressed;
}
