using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>How strongly something speaks for a cause, how surely a repair mends it, how common it is.</summary>
internal static class StrengthSheet
{
    private const string Cause = "cause", What = "what", Sign = "sign", State = "state", Repair = "repair", Word = "word", Common = "common";
    private const string HowCommon = "+common", ARepair = "+repair", ASign = "+sign";

    public static Sheet Sheet { get; } = new(
        "strength", "Mend how strong or how common", "How often a cause shows as something, how surely a repair mends it, how common it is.",
        [
            new(Cause, "Which cause is it about?", "What is wrong.", QuestionKind.PickOne, Cause) { Choices = c => Existing.Faults(c.Knowledge) },
            new(What, "What of it?", "A sign is what is seen, felt or complained of.", QuestionKind.PickOne, What)
            {
                Choices = _ => [new(ASign, "How often it shows as something"), new(ARepair, "How surely a repair mends it"), new(HowCommon, "How common it is")],
            },
            new(Sign, "Which sign?", "Those that it has come first; any other may be added.", QuestionKind.PickOne, Sign) { Applies = c => c.One(What) == ASign, Choices = Signs },
            new(State, "How is it then?", "What you find when this is the cause.", QuestionKind.PickOne, State)
            {
                Applies = c => c.Knowledge.Findings.ContainsKey(c.One(Sign)), Choices = c => Existing.Signs(c.Knowledge, c.One(Sign)),
            },
            new(Repair, "Which repair?", "Those that mend it come first.", QuestionKind.PickOne, Repair) { Applies = c => c.One(What) == ARepair, Choices = Repairs },
            new(Word, "How often?", "If only this is wrong.", QuestionKind.Scale, Word)
            {
                Applies = c => c.One(What) is ASign or ARepair, Choices = _ => Scales.Chance, Asks = Asks,
            },
            new(Common, "How common is it?", "Beside other causes.", QuestionKind.Scale, Common)
            {
                Applies = c => c.One(What) == HowCommon, Choices = _ => Scales.Frequency,
                Asks = c => $"How common is it? It is called {c.Knowledge.Faults.GetValueOrDefault(c.One(Cause))?.HowCommon} now.",
            },
            .. CreditQuestions.All,
        ])
    { Write = Write };

    private static Draft Write(SheetContext context, Credit credit)
    {
        var (key, path, was) = Target(context);
        var now = context.One(context.One(What) == HowCommon ? Common : Word);
        return new Draft($"Another strength: {CleanText.OneLine(context.Knowledge.Faults[context.One(Cause)].Is, 80)}", [new MendValue(key, path, was, now, credit)]);
    }

    private static (RuleKey Key, RulePath Path, string? Was) Target(SheetContext context)
    {
        var fault = context.Knowledge.Faults[context.One(Cause)];
        if (context.One(What) == HowCommon) return (new RuleKey(RuleKind.Fault, fault.Id), RulePath.Of("how common"), fault.HowCommon);
        if (context.One(What) == ARepair)
            return (new RuleKey(RuleKind.Repair, context.One(Repair)), RulePath.Of("mends", fault.Id), context.Knowledge.Repairs.GetValueOrDefault(context.One(Repair))?.Mends.GetValueOrDefault(fault.Id));
        var (sign, state) = (context.One(Sign), context.Has(State) ? context.One(State) : "yes");
        return (new RuleKey(RuleKind.Fault, fault.Id), RulePath.Of("shows as", sign, state), fault.ShowsAs.GetValueOrDefault(sign)?.GetValueOrDefault(state));
    }

    private static string Asks(SheetContext context)
    {
        if (!context.Knowledge.Faults.ContainsKey(context.One(Cause))) return "How often?";
        var was = Target(context).Was;
        var ask = context.One(What) == ARepair ? "How surely does it mend it in the rider's own hands?" : "If only this is wrong: how often is it so?";
        return was is null ? $"{ask} The rules say nothing of it yet." : $"{ask} Now it is: {was} ({Scales.BandOf(was)}).";
    }

    private static ImmutableArray<Choice> Signs(SheetContext context)
    {
        ImmutableArray<Choice> all = [.. Existing.Complaints(context.Knowledge), .. Existing.Findings(context.Knowledge)];
        var has = context.Knowledge.Faults.GetValueOrDefault(context.One(Cause))?.ShowsAs;
        return [.. all.OrderBy(c => has?.ContainsKey(c.Value) == true ? 0 : 1)];
    }

    private static ImmutableArray<Choice> Repairs(SheetContext context) =>
        [.. Existing.Repairs(context.Knowledge).OrderBy(c => context.Knowledge.Repairs[c.Value].Mends.ContainsKey(context.One(Cause)) ? 0 : 1)];
}
