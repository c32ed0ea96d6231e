using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A text of a rule in better words.</summary>
internal static class WordingSheet
{
    public const string Name = "wording", Of = "of", Rule = "rule";

    private const string Part = "part", Text = "text", Lines = "lines", Number = "number";

    private static readonly ImmutableArray<string> Numbers = ["minutes", "money", "keeps for days"];

    private static readonly ImmutableArray<(string Value, RuleKind Kind, string Says)> Kinds =
    [
        ("check", RuleKind.Check, "A question or check"), ("repair", RuleKind.Repair, "A repair"), ("cause", RuleKind.Fault, "A cause"),
        ("complaint", RuleKind.Complaint, "A trouble"), ("finding", RuleKind.Finding, "Something seen, felt or told, with its answers"), ("how-to", RuleKind.HowTo, "An answer to 'how do I'"),
        ("cover", RuleKind.Cover, "What has to be opened first"), ("fact", RuleKind.Fact, "A fact of the bike, with its answers"), ("service", RuleKind.Service, "A service task"),
    ];

    public static Sheet Sheet { get; } = new(
        Name, "Mend a wording", "A question, a step or an answer in better words.",
        [
            new(Of, "What do you want to mend?", "The kind of rule in which it stands.", QuestionKind.PickOne, Of) { Choices = _ => [.. Kinds.Select(k => new Choice(k.Value, k.Says))] },
            new(Rule, "Which one?", "Pick it, or type some words of it.", QuestionKind.PickOne, Rule) { Choices = Rules },
            new(Part, "Which part of it?", "Each is shown as it is now.", QuestionKind.PickOne, Part) { Choices = Parts },
            new(Text, "How should it read?", "As you would say it to a newcomer.", QuestionKind.Text, Text)
            {
                Longest = 3000, Applies = c => Chosen(c) is { Many: false } part && !Numbers.Contains(part.Key), Before = c => Chosen(c)?.Text, Asks = c => $"{Chosen(c)?.Says}: how should it read?",
            },
            new(Number, "How many?", "Just a number.", QuestionKind.Number, Text)
            {
                Most = 10_000, Applies = c => Chosen(c) is { } part && Numbers.Contains(part.Key), Before = c => Chosen(c)?.Text, Asks = c => $"{Chosen(c)?.Says}: how many?",
            },
            new(Lines, "How should it read? One a line.", "All of it anew, in the right order. Behind ' -- ' a step may say what it should look like.", QuestionKind.Lines, Text)
            {
                Longest = 1000, Applies = c => Chosen(c) is { Many: true }, Before = c => Chosen(c)?.Text, Asks = c => $"{Chosen(c)?.Says}: how should it read? One a line, all of it anew.",
            },
            .. CreditQuestions.All,
        ])
    { Write = Write };

    private static Draft Write(SheetContext context, Credit credit)
    {
        var (key, part) = (KeyOf(context), Chosen(context)!);
        var title = $"In other words: {CleanText.OneLine(Rules(context).FirstOrDefault(r => r.Value == key.Id)?.Says ?? key.Id, 80)}";
        if (!part.Many)
        {
            var now = context.Has(Text) ? context.One(Text) : context.One(Number);
            return new Draft(title, [new MendValue(key, new RulePath(part.Key), part.Text.Length == 0 ? null : part.Text, now, credit)]);
        }

        var lines = context.All(Lines);
        ImmutableArray<string> kept = [.. part.Lines.Where(lines.Contains)], added = [.. lines.Where(l => !part.Lines.Contains(l))];
        // Steps carry notes, intervals may stand in other words than they are shown, and texts that change their order cannot be told as coming or going: then the whole rule is written anew.
        if (part.Key is "steps" or "every" || !kept.Concat(added).SequenceEqual(lines))
            return new Draft(title, [new PutRule(key, part.Anew!(lines, credit).ToString())]);
        return new Draft(title,
        [
            .. part.Lines.Where(l => !lines.Contains(l)).Select(l => new MendList(key, new RulePath(part.Key), null, l, credit)),
            .. added.Select(l => new MendList(key, new RulePath(part.Key), l, null, credit)),
        ]);
    }

    private static RuleKey KeyOf(SheetContext context) =>
        new(Kinds.FirstOrDefault(k => k.Value == context.One(Of)) is { Value: not null } kind ? kind.Kind : RuleKind.Check, context.One(Rule));

    private static WordingPart? Chosen(SheetContext context) =>
        context.Has(Part) ? WordingParts.Of(context.Knowledge, KeyOf(context)).FirstOrDefault(p => p.Key == context.One(Part)) : null;

    private static ImmutableArray<Choice> Parts(SheetContext context) =>
        [.. WordingParts.Of(context.Knowledge, KeyOf(context)).Select(p => new Choice(p.Key, p.Text.Length == 0 ? $"{p.Says} (nothing yet)" : p.Says, CleanText.OneLine(p.Text, 90)))];

    private static ImmutableArray<Choice> Rules(SheetContext context) => context.One(Of) switch
    {
        "check" => Existing.Checks(context.Knowledge),
        "repair" => Existing.Repairs(context.Knowledge),
        "cause" => Existing.Faults(context.Knowledge),
        "complaint" => Existing.Complaints(context.Knowledge),
        "finding" => Existing.Findings(context.Knowledge),
        "how-to" => Existing.HowTos(context.Knowledge),
        "cover" => Existing.Covers(context.Knowledge),
        "fact" => Existing.Facts(context.Knowledge),
        "service" => Existing.Tasks(context.Knowledge),
        _ => [],
    };
}
