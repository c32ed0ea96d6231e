using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>The options of a card as buttons and lists.</summary>
internal static class AnswerControls
{
    /// <summary>Answers go on buttons while there are no more of them, and none is longer: what a telephone shows of a button on one line.</summary>
    private const int MostButtons = 5, MostButtonText = 40;

    /// <summary>What asks for dangers goes on buttons up to so many.</summary>
    private const int MostDangerButtons = 10;

    /// <summary>Short answers share a row as long as a telephone holds them side by side.</summary>
    private const int MostRowText = 26, MarginText = 4;

    /// <summary>The rows, in order: answers, helps, and the ways to what is believed and to one's own words.</summary>
    public static IReadOnlyList<Component> Of(Card card, CaseId @case, bool words)
    {
        var answers = Answers(card);
        var rows = Listed(answers, @case) ? Lists(answers, @case) : Rows(Sharing(answers), answers.Select(o => Answer(o, @case)));
        var helps = card.Options.Where(o => o.Role == OptionRole.Help).Select(o => AnswerControls.Button(o, @case, ButtonStyles.Secondary));
        if (words)
        {
            var serial = Serial(card.Options.FirstOrDefault());
            helps = helps.Append(Button("What do you think?", CustomId.Think)).Append(Button("In my own words", CustomId.Words));

            Component Button(string label, string verb) =>
                new(ComponentTypes.Button, Style: ButtonStyles.Secondary, Label: label, CustomId: new CustomId(verb, @case, serial).ToString());
        }

        return [.. rows, .. Rows(Limits.ButtonsInRow, helps)];
    }

    /// <summary>Lines with the answers in full, where the list shows them cut; else none.</summary>
    public static IEnumerable<string> InFull(Card card)
    {
        var answers = Answers(card);
        if (!answers.Any(o => Label(o).Length > Limits.SelectText)) yield break;
        yield return "**The answers in full:**";
        for (var i = 0; i < answers.Count; i++)
        {
            var first = string.Create(CultureInfo.InvariantCulture, $"**{i + 1}.** ");
            foreach (var run in TextRuns.Of(Label(answers[i])))
            {
                yield return first + Markup.SafeLine(run);
                first = "";
            }
        }
    }

    private static List<CardOption> Answers(Card card) => [.. card.Options.Where(o => o.Role == OptionRole.Answer)];

    // A danger must be one press away, so its question has no list. A list also takes what is too long for a button's id: its values carry the id of the option alone.
    private static bool Listed(List<CardOption> answers, CaseId @case)
    {
        if (answers.Any(o => !new CustomId(CustomId.Answer, @case, o.Id).Fits)) return true;
        return answers.Any(IsDanger)
            ? answers.Count > MostDangerButtons || answers.Any(o => Label(o).Length > Limits.ButtonLabel)
            : answers.Count > MostButtons || answers.Any(o => Label(o).Length > MostButtonText);
    }

    private static bool IsDanger(CardOption option) => OptionId.Read(option.Id)?.AsDanger is not null;

    private static int Sharing(List<CardOption> answers) => answers.Sum(o => Label(o).Length + MarginText) - MarginText <= MostRowText ? Limits.ButtonsInRow : 1;

    private static IEnumerable<Component> Lists(List<CardOption> answers, CaseId @case)
    {
        var numbered = answers.Any(o => Label(o).Length > Limits.SelectText);
        return answers
            .Select((o, i) => new SelectOption(
                TextRuns.Cut(numbered ? string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {Label(o)}") : Label(o), Limits.SelectText), o.Id))
            .Chunk(Limits.SelectOptions)
            .Select((options, page) => new Component(
                ComponentTypes.StringSelect,
                CustomId: new CustomId(CustomId.Pick, @case, Serial(answers[0]) + (page == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"-{page + 1}"))).ToString(),
                Placeholder: page == 0 ? "Pick your answer" : "More answers",
                Options: options))
            .Select(list => new Component(ComponentTypes.Row, Components: [list]));
    }

    private static IEnumerable<Component> Rows(int most, IEnumerable<Component> buttons) =>
        buttons.Chunk(most).Select(row => new Component(ComponentTypes.Row, Components: row));

    private static Component Answer(CardOption option, CaseId @case) =>
        Button(option, @case, IsDanger(option) ? ButtonStyles.Danger : ButtonStyles.Primary);

    private static Component Button(CardOption option, CaseId @case, int style) => new(
        ComponentTypes.Button,
        Style: style,
        Label: TextRuns.Cut(Label(option), Limits.ButtonLabel),
        CustomId: new CustomId(CustomId.Answer, @case, option.Id).ToString());

    // The platform refuses an empty label, and with it the whole message.
    private static string Label(CardOption option) => Markup.OneLine(option.Label) is { Length: > 0 } label ? label : "(no words)";

    private static string Serial(CardOption? option) =>
        option is not null && OptionId.Read(option.Id) is { } id ? id.Serial.ToString(CultureInfo.InvariantCulture) : "";
}
