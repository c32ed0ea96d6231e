using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>The answers of a reminder as a telephone shows them well: which task, what to do with it, when else, and what stops it, a row each.</summary>
internal static class ReminderControls
{
    /// <param name="back">The reminder to which a way back is shown; null: none.</param>
    public static IReadOnlyList<Component> Of(ClubId club, Card card, NudgeAnswer? back = null)
    {
        var answers = card.Options.Select(o => (Option: o, Answer: NudgeAnswer.Read(o.Id))).Where(x => x.Answer is not null).ToList();
        var rows = answers.GroupBy(x => RowOf(x.Answer!.Verb)).OrderBy(g => g.Key).SelectMany(g => g.Key switch
        {
            Row.Which => [List(club, [.. g.Select(x => (x.Option, x.Answer!))])],
            Row.Trouble => g.Select(x => Buttons([Button(club, x.Option, x.Answer!)])),
            _ => g.Chunk(Limits.ButtonsInRow).Select(row => Buttons([.. row.Select(x => Button(club, x.Option, x.Answer!))])),
        });
        return back is null
            ? [.. rows]
            : [.. rows, Buttons([new Component(ComponentTypes.Button, Style: ButtonStyles.Secondary, Label: "Back", CustomId: ReminderIds.Of(ReminderIds.Back, club, back).ToString())])];
    }

    /// <summary>The rows, from the top.</summary>
    private enum Row
    {
        Which,
        Trouble,
        Act,
        Later,
        Stop,
    }

    private static Row RowOf(NudgeVerb verb) => verb switch
    {
        NudgeVerb.Look => Row.Which,
        NudgeVerb.OpenCase => Row.Trouble,
        NudgeVerb.Done or NudgeVerb.AllDone or NudgeVerb.DueDone or NudgeVerb.HowTo or NudgeVerb.Trouble => Row.Act,
        NudgeVerb.Tonight or NudgeVerb.Weekend or NudgeVerb.NextWeek or NudgeVerb.Rode => Row.Later,
        _ => Row.Stop,
    };

    private static Component List(ClubId club, IReadOnlyList<(CardOption Option, NudgeAnswer Answer)> tasks) => Buttons(
    [
        new Component(
            ComponentTypes.StringSelect,
            CustomId: ReminderIds.Of(ReminderIds.Answer, club, tasks[0].Answer with { Bike = "", Subject = "" }).ToString(),
            Placeholder: "One of them: how, done, trouble",
            Options: [.. tasks.Take(Limits.SelectOptions).Select(t => new SelectOption(
                TextRuns.Cut(Markup.OneLine(t.Option.Label), Limits.SelectText), ReminderIds.Of(ReminderIds.Answer, club, t.Answer).Rest))]),
    ]);

    private static Component Buttons(IReadOnlyList<Component> parts) => new(ComponentTypes.Row, Components: parts);

    private static Component Button(ClubId club, CardOption option, NudgeAnswer answer) => new(
        ComponentTypes.Button,
        Style: answer.Verb is NudgeVerb.Done or NudgeVerb.AllDone or NudgeVerb.Agree or NudgeVerb.GoOn ? ButtonStyles.Primary : ButtonStyles.Secondary,
        Label: TextRuns.Cut(Markup.OneLine(option.Label), Limits.ButtonLabel),
        CustomId: ReminderIds.Of(ReminderIds.Answer, club, answer).ToString());
}
