using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>A page of a guided sheet as one form, filled in beforehand; and the form for a reason.</summary>
internal static class TeachingForms
{
    private const int MostFields = 5, MostTitle = 45, MostLabel = 45, MostHint = 100, MostText = 4000, MostReason = 500, MostNumber = 12, MostSearch = 100;

    /// <summary>Texts up to this length get one line.</summary>
    private const int MostOneLine = 120;

    /// <summary>The style of a field for one line, and for several.</summary>
    private const int Short = 1, Paragraph = 2;

    private const string ReasonField = "words";

    /// <summary>The questions that go into one form with this one.</summary>
    public static ImmutableArray<Question> Page(SheetState sheet, Question question)
    {
        var page = sheet.Page(question);
        var from = page.IndexOf(question);
        return from < 0 ? [question] : page.Length <= MostFields ? page : [.. page.Skip(from / MostFields * MostFields).Take(MostFields)];
    }

    /// <summary>What the button says that opens the form; null where the card's own options are all that is needed.</summary>
    /// <param name="shown">How many answers the card offers by itself.</param>
    public static string? Opens(SheetState sheet, Question question, int shown)
    {
        if (Page(sheet, question).Length > 1) return "Answer these";
        return question.Kind switch
        {
            QuestionKind.PickOne or QuestionKind.Scale => question.Choices(sheet.Context).Length > shown ? "Search by its words" : null,
            QuestionKind.PickSeveral => question.Choices(sheet.Context).Length > Limits.SelectOptions ? "Search by their words" : "Pick several",
            _ => "Write it",
        };
    }

    public static InteractionAnswer Of(string proposal, SheetState sheet, Question question) => new(
        AnswerTypes.Modal,
        new InteractionAnswerData(
            CustomId: TeachingIds.ToldFor(proposal, question.Id).ToString(),
            Title: TextRuns.Cut(Markup.OneLine(sheet.Sheet.Title), MostTitle),
            Components: [.. Page(sheet, question).Select(q => Field(q, sheet))]));

    /// <summary>A reason for somebody, in a sentence.</summary>
    public static InteractionAnswer Reason(TeachPress press) => new(
        AnswerTypes.Modal,
        new InteractionAnswerData(
            CustomId: TeachingIds.WhyFor(press).ToString(),
            Title: press.AsksTitle,
            Components:
            [
                new Component(
                    ComponentTypes.Label,
                    Label: TextRuns.Cut(press.AsksFor, MostLabel),
                    Inner: new Component(ComponentTypes.TextInput, CustomId: ReasonField, Style: Paragraph, MinLength: 1, MaxLength: MostReason, Required: true)),
            ]));

    /// <returns>What was written in the form for a reason; empty for nothing.</returns>
    public static string ReasonOf(Interaction submit) => Forms.WordsOf(submit) ?? "";

    /// <returns>By question, what a form of a page was told; an empty list for a field that was left empty.</returns>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> Answers(Interaction submit) => Forms.Fields(submit.Data?.Components ?? [])
        .Where(c => c.CustomId is not null && (c.Type is ComponentTypes.TextInput or ComponentTypes.StringSelect))
        .DistinctBy(c => c.CustomId)
        .ToImmutableSortedDictionary(
            c => c.CustomId!,
            c => c.Values is { } picked ? [.. picked] : string.IsNullOrWhiteSpace(c.Value) ? ImmutableArray<string>.Empty : [c.Value!],
            StringComparer.Ordinal);

    private static Component Field(Question question, SheetState sheet)
    {
        var put = Markup.OneLine(question.Put(sheet.Context));
        // A long question goes on in the line below.
        var hint = put.Length > MostLabel ? put : Markup.OneLine(question.Help);
        return new Component(
            ComponentTypes.Label,
            Label: TextRuns.Cut(put, MostLabel),
            Description: hint.Length > 0 ? TextRuns.Cut(hint, MostHint) : null,
            Inner: question.IsPicked && question.Choices(sheet.Context) is { Length: > 0 and <= Limits.SelectOptions } choices ? List(question, choices, sheet) : Text(question, sheet));
    }

    private static Component List(Question question, ImmutableArray<Choice> choices, SheetState sheet)
    {
        var now = sheet.Context.All(question.Id);
        if (now.IsEmpty && question.Before(sheet.Context) is { } before) now = [.. before.Split('\n')];
        return new Component(
            ComponentTypes.StringSelect,
            CustomId: question.Id,
            Required: question.Required,
            MinValues: question.Required ? 1 : 0,
            MaxValues: question.Kind == QuestionKind.PickSeveral ? choices.Length : 1,
            Options: [.. choices.Select(c => new SelectOption(
                TextRuns.Cut(Markup.OneLine(c.Says) is { Length: > 0 } says ? says : c.Value, Limits.SelectText),
                c.Value,
                c.Detail.Length > 0 ? TextRuns.Cut(Markup.OneLine(c.Detail), Limits.SelectText) : null,
                now.Contains(c.Value) ? true : null))]);
    }

    private static Component Text(Question question, SheetState sheet)
    {
        var answered = sheet.Shown(question);
        var value = question.Unit.Length > 0 ? sheet.Context.One(question.Id) : answered;
        if (value.Length == 0) value = question.Before(sheet.Context) ?? "";
        value = value.Length <= MostText ? value : TextRuns.Cut(value, MostText);
        var (style, most) = question.Kind switch
        {
            QuestionKind.Lines or QuestionKind.PickSeveral => (Paragraph, MostText),
            QuestionKind.Number => (Short, MostNumber),
            QuestionKind.PickOne or QuestionKind.Scale => (Short, MostSearch),
            _ => (question.Longest > MostOneLine || value.Contains('\n', StringComparison.Ordinal) ? Paragraph : Short, Math.Min(question.Longest, MostText)),
        };
        return new Component(
            ComponentTypes.TextInput,
            CustomId: question.Id,
            Style: style,
            MaxLength: Math.Max(most, value.Length),
            Required: question.Required,
            Placeholder: Hint(question) is { Length: > 0 } hint ? TextRuns.Cut(hint, MostHint) : null,
            Value: value.Length > 0 ? value : null);
    }

    private static string Hint(Question question) => question.Kind switch
    {
        QuestionKind.Lines => "One a line",
        QuestionKind.PickOne or QuestionKind.Scale => "Some words of the one you mean",
        QuestionKind.PickSeveral => "Some words of each, one a line",
        QuestionKind.Number => $"A number{(question.Unit.Length > 0 ? $" of {question.Unit}" : "")}",
        _ => question.Required ? "" : "May stay empty",
    };
}
