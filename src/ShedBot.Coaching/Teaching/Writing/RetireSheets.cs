using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A rule goes out of use, or comes back.</summary>
internal static class RetireSheets
{
    private const string Of = "of", Rule = "rule", Because = "because";

    private static readonly ImmutableArray<(string Value, RuleKind Kind, string Says)> Kinds =
    [
        ("cause", RuleKind.Fault, "A cause"), ("check", RuleKind.Check, "A question or check"), ("repair", RuleKind.Repair, "A repair"),
        ("complaint", RuleKind.Complaint, "A trouble"), ("how-to", RuleKind.HowTo, "An answer to 'how do I'"), ("service", RuleKind.Service, "A service task"), ("cover", RuleKind.Cover, "What has to be opened first"), ("fact", RuleKind.Fact, "A fact of the bike"),
    ];

    public static Sheet Retire { get; } = new(
        "retire", "Take a rule out of use", "It is not lost: it can be brought back at any time.",
        [
            new(Of, "What kind of rule?", "What is to go.", QuestionKind.PickOne, Of) { Choices = _ => [.. Kinds.Select(k => new Choice(k.Value, k.Says))] },
            new(Rule, "Which one?", "Pick it, or type some words of it.", QuestionKind.PickOne, Rule) { Choices = Rules },
            new(Because, "Why? A sentence for whoever asks later.", "Such as: We fit no such lever in this club.", QuestionKind.Text, Because),
            .. CreditQuestions.All,
        ])
    {
        Write = (context, credit) =>
        {
            var key = new RuleKey(Kinds.First(k => k.Value == context.One(Of)).Kind, context.One(Rule));
            RuleChange change = context.Layer.Items.FirstOrDefault(i => i.Key == key) is { InsteadOf: null } ? new DropRule(key) : new Retire(key, context.One(Because), credit);
            return new Draft($"Out of use: {CleanText.OneLine(Rules(context).FirstOrDefault(r => r.Value == key.Id)?.Says ?? key.Id, 80)}", [change]);
        },
    };

    public static Sheet Restore { get; } = new(
        "restore", "Bring a rule back", "One that was taken out of use.",
        [
            new(Rule, "Which one?", "Those that are out of use.", QuestionKind.PickOne, Rule) { Choices = c => [.. c.Layer.Retires.Select(r => new Choice(r.Key.ToString(), r.Key.ToString(), r.Because))] },
            .. CreditQuestions.All,
        ])
    {
        Write = (context, _) => RuleKey.TryRead(context.One(Rule), out var key) ? new Draft($"Back in use: {key}", [new Restore(key)]) : new Draft("Back in use", []),
    };

    private static ImmutableArray<Choice> Rules(SheetContext context) => context.One(Of) switch
    {
        "cause" => Existing.Faults(context.Knowledge),
        "check" => Existing.Checks(context.Knowledge),
        "repair" => Existing.Repairs(context.Knowledge),
        "complaint" => Existing.Complaints(context.Knowledge),
        "how-to" => Existing.HowTos(context.Knowledge),
        "service" => Existing.Tasks(context.Knowledge),
        "cover" => Existing.Covers(context.Knowledge),
        "fact" => Existing.Facts(context.Knowledge),
        _ => [],
    };
}
