using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching;

/// <summary>The cards of a sheet while it is written.</summary>
internal static class SheetCards
{
    /// <summary>So many choices are options; more of them are searched by their words.</summary>
    public const int MostOptions = 20;

    /// <summary>Of a list that is longer than <see cref="MostOptions"/>, so many are shown to begin with.</summary>
    private const int MostOfMany = 12;

    private const int MostShown = 600;

    /// <param name="lead">What to say first, or null.</param>
    /// <param name="typed">What was typed and fits several; null: nothing.</param>
    public static Card Ask(string proposal, SheetState state, Question question, string? lead = null, string? typed = null)
    {
        var context = state.Context;
        var all = question.Choices(context);
        var most = all.Length <= MostOptions ? MostOptions : MostOfMany;
        ImmutableArray<Choice> shown = typed is null ? [] : question.Suggest(typed, context, most);
        if (shown.IsEmpty) shown = all.Length <= MostOptions ? all : question.Beginning(context, most);
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        if (lead is not null) blocks.Add(Say.Text(lead));
        blocks.Add(Say.Text(question.Help));
        if (question.Kind != QuestionKind.Scale && shown.Any(c => c.Detail.Length > 0) && all.Length <= MostOptions) blocks.AddRange(Say.List("", shown.Where(c => c.Detail.Length > 0).Select(c => $"{c.Says}: {c.Detail}")));
        if (question.Before(context) is { Length: > 0 } before) blocks.AddRange(Now(question, before));
        if (state.Shown(question) is { Length: > 0 } answered) blocks.AddRange(Say.List("Your answer so far", answered.Split('\n')));
        if (HowTo(question, all.Length, shown.Length) is { } howTo) blocks.Add(Say.Text(howTo));
        return new Card(
            $"{question.Put(context)}",
            blocks.ToImmutable(),
            [
                .. shown.Select(c => new TeachPress(TeachVerb.Say, proposal, question.Id, c.Value).Option(Label(question, c))),
                .. question.Required ? [] : new[] { new TeachPress(TeachVerb.Skip, proposal, question.Id).Option("skip", OptionRole.Help) },
                .. state.Before(question) is { } back ? [new TeachPress(TeachVerb.GoOn, proposal, back.Id).Option("one back", OptionRole.Help)] : Array.Empty<CardOption>(),
                new TeachPress(TeachVerb.Sheet, proposal).Option("all so far", OptionRole.Help),
            ]);
    }

    /// <summary>All that was answered, each with a way to change it.</summary>
    public static Card All(string proposal, SheetState state)
    {
        ImmutableArray<Question> answered = [.. state.Asked.Where(q => state.Context.Answers.ContainsKey(q.Id))];
        var next = state.Next;
        return new Card(
            $"{state.Sheet.Title}: all so far",
            [
                .. answered.IsEmpty ? new CardBlock[] { Say.Text("Nothing is answered yet.") } : [new ListBlock("", [.. answered.Select((q, i) => Line(i + 1, q, state))])],
                .. state.Wrong.IsEmpty ? [] : new CardBlock[] { new ListBlock("These no longer fit the rules as they are; please answer them again", [.. state.Wrong.Select(q => q.Put(state.Context))]) },
                Say.Text(next is null ? "All is answered. To change an answer, pick it." : $"Next: {next.Put(state.Context)}"),
            ],
            [
                .. answered.Take(MostOptions).Select(q => new TeachPress(TeachVerb.GoOn, proposal, q.Id).Option($"Change: {CleanText.OneLine(q.Put(state.Context), 60)}")),
                next is null ? new TeachPress(TeachVerb.Look, proposal).Option("What it comes to", OptionRole.Help) : new TeachPress(TeachVerb.GoOn, proposal).Option("go on", OptionRole.Help),
                new TeachPress(TeachVerb.Withdraw, proposal).Option("put it away", OptionRole.Help),
            ]);
    }

    public static Card Choose(string? tip) => new(
        "What would you like to write?",
        [Say.Text("A few short questions each. Every answer is kept at once, and nothing changes for anybody before it is published.")],
        [.. Sheets.All.Select(s => new TeachPress(TeachVerb.Begin, s.Name, tip ?? "").Option(s.Title))]);

    /// <summary>How far the sheet is. What is asked further on hangs on the answers, so the parts of a long sheet are counted and not the questions.</summary>
    public static string? Progress(SheetState state, Question next)
    {
        string[] parts = [.. state.Sheet.Questions.Select(q => q.Part).Where(p => p.Length > 0).Distinct()];
        var at = Array.IndexOf(parts, next.Part);
        return at < 0 ? null : string.Create(CultureInfo.InvariantCulture, $"Part {at + 1} of {parts.Length}: {next.Part}.");
    }

    /// <summary>A word of a scale with what it means, since that is what one goes by.</summary>
    private static string Label(Question question, Choice choice) =>
        Say.Capital(question.Kind == QuestionKind.Scale && choice.Detail.Length > 0 ? $"{choice.Says}: {choice.Detail}" : choice.Says);

    private static string Line(int number, Question question, SheetState state) =>
        string.Create(CultureInfo.InvariantCulture, $"{number}. {question.Put(state.Context)} {(state.Shown(question) is { Length: > 0 } said ? CleanText.OneLine(said.Replace("\n", " / ", StringComparison.Ordinal), 200) : "(skipped)")}");

    private static IEnumerable<CardBlock> Now(Question question, string before) => question.Kind == QuestionKind.Lines
        ? Say.List("Now it reads", before.Split('\n'))
        : [Say.Text($"Now it reads: {(before.Length <= MostShown ? before : before[..MostShown] + "…")}")];

    private static string? HowTo(Question question, int all, int shown) => question.Kind switch
    {
        QuestionKind.PickOne or QuestionKind.Scale => all > shown ? $"These are {shown} of {all}. Pick one, or find another by some words of it." : null,
        QuestionKind.PickSeveral => all > shown ? $"These are {shown} of {all}. Pick, or find others by some words of them." : null,
        _ => null,
    };
}
