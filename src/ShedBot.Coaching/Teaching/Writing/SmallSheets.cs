using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A check for something that is looked at, a repair for a cause that is known, and an answer to 'how do I'.</summary>
internal static class SmallSheets
{
    private static readonly CheckQuestions CheckOf = new(
        "check", _ => true, c => c.Knowledge.Findings.TryGetValue(c.One("finding"), out var finding) ? $"It tells {finding.Means}." : "It tells more of what is wrong.");

    private static readonly RepairQuestions RepairOf = new("repair", c => c.Knowledge.Faults.TryGetValue(c.One("cause"), out var fault) ? fault.Is : "that is the cause", mayHandOver: false);

    public static Sheet Check { get; } = new(
        "check", "A new way to look", "Another way to learn something that the rules know, quicker or with fewer tools.",
        [
            new("finding", "What does it tell?", "What is looked at.", QuestionKind.PickOne, "finding") { Choices = c => Existing.Findings(c.Knowledge) },
            .. CheckOf.Questions(), .. CreditQuestions.All,
        ])
    {
        Write = (context, credit) =>
        {
            var id = new NewIds(context.Knowledge).For(context.One("check-ask"));
            return new Draft($"A new way to look: {CleanText.OneLine(context.One("check-ask"), 80)}", [CheckOf.Write(context, id, context.One("finding"), credit)]);
        },
    };

    public static Sheet Repair { get; } = new(
        "repair", "A new repair", "For a cause that the rules know.",
        [
            new("cause", "For which cause?", "What is wrong.", QuestionKind.PickOne, "cause") { Choices = c => Existing.Faults(c.Knowledge) },
            .. RepairOf.Questions(), .. CreditQuestions.All,
        ])
    {
        Write = (context, credit) =>
        {
            var change = RepairOf.Write(context, new NewIds(context.Knowledge).For, context.One("cause"), credit)!;
            var does = context.IsNew("repair") ? Fragment.ToDo(context.One("repair-does")) : context.Knowledge.Repairs[context.One("repair")].Does;
            return new Draft($"A repair: {CleanText.OneLine(does, 80)}", [change]);
        },
    };

    private static readonly CautionQuestions HowToCautions = new("how-to", _ => true);

    public static Sheet HowTo { get; } = new(
        "how-to", "An answer to 'how do I'", "For a question that is no trouble.",
        [
            new("called", "What is it about? A few words.", "Such as: when to grease the clutch", QuestionKind.Text, "how-to"),
            new("asks", "How do riders ask it? One way a line.", "Such as: how often should I grease the clutch", QuestionKind.Lines, "how-to"),
            new("answer", "The answer, one step or paragraph a line.", "In the right order; each as short as it can be.", QuestionKind.Lines, "how-to") { Longest = 1000 },
            new("how-to-hazard", "How dangerous is it?", "For whoever does it.", QuestionKind.Scale, "how-to-hazard") { Choices = _ => Scales.Hazard },
            .. HowToCautions.Questions(), .. CreditQuestions.All,
        ])
    {
        Write = (context, credit) =>
        {
            var called = Fragment.Of(context.One("called"));
            var id = new NewIds(context.Knowledge).For(called);
            return new Draft($"An answer: {CleanText.OneLine(called, 80)}",
            [
                new PutRule(new RuleKey(RuleKind.HowTo, id), new RuleItem().Add("id", id).Add("called", called).Add("riders ask", context.All("asks"))
                    .Add("cautions", HowToCautions.Write(context)).Add("answer", context.All("answer")).By(credit).ToString()),
            ]);
        },
    };
}
