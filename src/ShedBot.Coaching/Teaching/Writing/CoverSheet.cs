using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What has to be opened before something can be seen or mended; its minutes are paid once for all that lies behind it.</summary>
internal static class CoverSheet
{
    private const string Called = "cover-called", How = "cover-how", Tools = "cover-tools", Minutes = "cover-minutes", Behind = "cover-behind";

    public static Sheet Sheet { get; } = new(
        "cover", "Something to open first", "A cover, a guard, a wire to slacken: its steps come before every check and repair behind it, and its minutes count once.",
        [
            new(Called, "What is opened? A few words.", "With what holds it: the chain guard (two screws)", QuestionKind.Text, "cover") { Longest = 200 },
            new(How, "How is it opened? One step a line, in the right order.", "From engine off and cold until all lies open. A cover lies behind no other: say here what comes off before it.", QuestionKind.Lines, "cover") { Longest = 600 },
            new(Tools, "Which tools? One a line, or skip.", "Such as: cross-head screwdriver that fits", QuestionKind.Lines, "cover") { Required = false, Longest = 80 },
            new(Minutes, "How many minutes does it take a beginner?", "Just a number: 5.", QuestionKind.Number, "cover") { Unit = "minutes" },
            new(Behind, "Which checks and repairs lie behind it? Skip when they are still to be written.", "They then ask for it to be opened first. A new check or repair can pick it too.", QuestionKind.PickSeveral, Behind)
            {
                Required = false, Choices = Works,
            },
            .. CreditQuestions.All,
        ])
    { Write = Write };

    private static Draft Write(SheetContext context, Credit credit)
    {
        var id = new NewIds(context.Knowledge).For(context.One(Called));
        var changes = ImmutableArray.CreateBuilder<RuleChange>();
        changes.Add(new PutRule(new RuleKey(RuleKind.Cover, id), new RuleItem()
            .Add("id", id).Add("called", context.One(Called)).Add("minutes", context.One(Minutes)).Add("tools", context.All(Tools)).Add("how", context.All(How)).By(credit).ToString()));
        foreach (var work in context.All(Behind))
        {
            if (!RuleKey.TryRead(work, out var key)) continue;
            var check = key.Kind == RuleKind.Check ? context.Knowledge.Checks[key.Id] : null;
            changes.Add(new MendValue(key, RulePath.Of("cover"), check is null ? context.Knowledge.Repairs[key.Id].Cover : check.Cover, id, credit));
            // Whoever opens something has their hands at the machine.
            if (check is { HandsOn: false }) changes.Add(new MendValue(key, RulePath.Of("hands on"), "no", "yes", credit));
        }

        return new Draft($"To open first: {CleanText.OneLine(context.One(Called), 80)}", changes.ToImmutable());
    }

    private static ImmutableArray<Choice> Works(SheetContext context) =>
    [
        .. Existing.Checks(context.Knowledge).Select(c => Named(c, RuleKind.Check, "Check")), .. Existing.Repairs(context.Knowledge).Select(c => Named(c, RuleKind.Repair, "Repair")),
    ];

    private static Choice Named(Choice choice, RuleKind kind, string what) => choice with { Value = new RuleKey(kind, choice.Value).ToString(), Says = $"{what}: {choice.Says}" };
}
