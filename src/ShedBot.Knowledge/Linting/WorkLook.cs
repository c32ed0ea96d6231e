using System.Text.RegularExpressions;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R051 to R054, R056: each check and repair by itself.</summary>
internal static partial class WorkLook
{
    /// <summary>Shorter names, such as 'stand', are ordinary words in a step.</summary>
    private const int ShortestTellingTool = 6;

    public static void Look(LintContext lint)
    {
        var tools = lint.Rules.Checks.SelectMany(c => c.Rule.Tools)
            .Concat(lint.Rules.Covers.SelectMany(c => c.Rule.Tools))
            .Concat(lint.Rules.Repairs.SelectMany(r => r.Rule.Tools))
            .Where(t => t.Length >= ShortestTellingTool)
            .Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        foreach (var check in lint.Rules.Checks)
        {
            Caution(lint, check, check.Rule.Hazard, check.Rule.Cautions.Length, $"the check '{check.Rule.Id}'");
            if (!check.Rule.HandsOn && check.Node["hands on"] is not null) HandsOff(lint, check, tools);
        }

        foreach (var repair in lint.Rules.Repairs)
        {
            Cautions(lint, repair, repair.Rule.Hazard, repair.Rule.Cautions.Length, $"the repair '{repair.Rule.Id}'");
            if (repair.Rule.Prove.IsEmpty)
                lint.Tell(WorkRules.NoProof, repair, repair.At("prove"), $"the repair '{repair.Rule.Id}' does not say how to prove that it held.", "Add 'prove:' with what to do and what to see.");
            Sizes(lint, repair);
        }
    }

    /// <summary>R052, R053: for work that a rider does from beginning to end.</summary>
    public static void Cautions<T>(LintContext lint, Written<T> rule, string hazard, int cautions, string whose)
    {
        Caution(lint, rule, hazard, cautions, whose);
        if (hazard == "low" && cautions == 0)
            lint.Tell(WorkRules.LowHazardNoCaution, rule, rule.At("hazard"), $"{whose} has a hazard and no caution.", "Say under 'cautions' what is dangerous, or set 'hazard: none'.");
    }

    private static void Caution<T>(LintContext lint, Written<T> rule, string hazard, int cautions, string whose)
    {
        if (hazard is "medium" or "high" && cautions == 0)
            lint.Tell(WorkRules.NoCaution, rule, rule.At("hazard"), $"{whose} has the hazard '{hazard}' and no caution.", "Add 'cautions:' with signal word, hazard, consequence and how to avoid it.");
    }

    private static void HandsOff(LintContext lint, Written<CheckRule> check, List<string> tools)
    {
        var rule = check.Rule;
        var named = rule.How.SelectMany(h => tools.Where(t => Names(h, t))).FirstOrDefault();
        var because = rule.Cover is not null ? $"it is behind the cover '{rule.Cover}'"
            : !rule.Tools.IsEmpty ? $"it needs tools ({rule.Tools[0]})"
            : named is not null ? $"its steps need a tool ({named})"
            : null;
        if (because is not null)
            lint.Tell(WorkRules.HandsOff, check, check.At("hands on"), $"the check '{rule.Id}' says 'hands on: no', but {because}.", "Set 'hands on: yes', so that the question before hands-on work comes first.");
    }

    private static bool Names(string text, string tool)
    {
        for (var at = text.IndexOf(tool, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(tool, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var end = at + tool.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end]))) return true;
        }

        return false;
    }

    private static void Sizes(LintContext lint, Written<RepairRule> repair)
    {
        var sourced = repair.Node["source"] is not null && repair.Rule.Origin.Source != "common practice";
        for (var i = 0; i < repair.Rule.Parts.Length; i++)
        {
            var part = repair.Rule.Parts[i];
            if (!sourced && part.Size.Any(char.IsDigit) && !Backed().IsMatch(part.Size))
                lint.Tell(WorkRules.SoftSize, repair, repair.ItemAt("parts", i), $"the size of '{part.Name}' is the bare figure '{part.Size}'.", "Say how to measure or match the rider's own, or name the standard it comes from.");
        }
    }

    /// <summary>Words that send the rider to their own part, or name where the figure comes from.</summary>
    [GeneratedRegex(@"\b(?i:measur|match|compar|your own|stamped|marked|same as|like the old|according to|catalogue)|\b(?:ISO|DIN|JIS|ANSI|ASTM|BS|EN)\b", RegexOptions.CultureInvariant)]
    private static partial Regex Backed();
}
