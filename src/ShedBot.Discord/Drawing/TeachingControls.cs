using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>The options of a teaching card: the form first where there is one, then what can be picked, then the helps in a row.</summary>
internal static class TeachingControls
{
    /// <summary>More than so many go into a list; what a telephone shows side by side.</summary>
    private const int MostButtons = 5, MostRowText = 40;

    /// <param name="form">The question whose form is offered, or null.</param>
    /// <param name="label">What the button of the form says.</param>
    public static IReadOnlyList<Component> Of(Card card, CustomId? form = null, string label = "")
    {
        var answers = card.Options.Where(o => o.Role == OptionRole.Answer && o.Id.Length <= Limits.CustomId).DistinctBy(o => o.Id).ToList();
        var helps = card.Options.Where(o => o.Role == OptionRole.Help && o.Id.Length <= Limits.CustomId).DistinctBy(o => o.Id).Select(o => Button(o, ButtonStyles.Secondary));
        return
        [
            .. form is { Fits: true } open ? [Row([new Component(ComponentTypes.Button, CustomId: open.ToString(), Style: ButtonStyles.Primary, Label: label)])] : Array.Empty<Component>(),
            .. answers.Count > MostButtons ? Lists(answers) : Buttons(answers),
            .. helps.Chunk(Limits.ButtonsInRow).Select(Row),
        ];
    }

    private static IEnumerable<Component> Lists(List<CardOption> answers) => answers.Chunk(Limits.SelectOptions).Select((options, i) => Row(
    [
        new Component(
            ComponentTypes.StringSelect,
            CustomId: TeachingIds.PickFor(i).ToString(),
            Placeholder: i == 0 ? "Pick one" : "More of them",
            Options: [.. options.Select(o => new SelectOption(Label(o, Limits.SelectText), o.Id))]),
    ]));

    private static IEnumerable<Component> Buttons(List<CardOption> answers) =>
        answers.Select(o => Button(o, Changes(o) ? ButtonStyles.Danger : ButtonStyles.Primary)).Chunk(answers.Sum(o => Label(o, Limits.ButtonLabel).Length) <= MostRowText ? Limits.ButtonsInRow : 1).Select(Row);

    /// <summary>What changes the rules for everybody must not look like one more look.</summary>
    private static bool Changes(CardOption option) => TeachPress.Read(option.Id) is { Verb: TeachVerb.Publish or TeachVerb.TakeBack };

    private static Component Row(Component[] parts) => new(ComponentTypes.Row, Components: parts);

    private static Component Button(CardOption option, int style) =>
        new(ComponentTypes.Button, CustomId: option.Id, Style: style, Label: Label(option, Limits.ButtonLabel));

    // The platform refuses an empty label, and with it the whole message.
    private static string Label(CardOption option, int most) => TextRuns.Cut(Markup.OneLine(option.Label) is { Length: > 0 } label ? label : "(no words)", most);
}
