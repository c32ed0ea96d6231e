using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R104, R105, R106, R108: hazards, cautions and safe lines of the project's own work. What a club retires is not done, and needs none.</summary>
internal static partial class SafetyWork
{
    public static IEnumerable<Weakening> Look(KnowledgeBase under, KnowledgeBase club) =>
    [
        .. Each(under.Checks, club.Checks, RuleKind.Check, r => new Work(r.Hazard, r.Cautions, r.How, r.HandsOn, null)),
        .. Each(under.Covers, club.Covers, RuleKind.Cover, r => new Work("none", [], r.How, false, null)),
        .. Each(under.Repairs, club.Repairs, RuleKind.Repair, r => new Work(r.Hazard, r.Cautions, Steps(r.Steps), false, r.ForHelper)),
        .. Each(under.Service, club.Service, RuleKind.Service, r => new Work(r.Hazard, r.Cautions, Steps(r.Steps), false, null)),
        .. Each(under.HowTos, club.HowTos, RuleKind.HowTo, r => new Work("none", r.Cautions, r.Answer, false, null)),
    ];

    /// <returns>True when the caution says the same, and at least as loudly.</returns>
    public static bool Keeps(CautionRule now, CautionRule caution) =>
        now.Hazard == caution.Hazard && now.Consequence == caution.Consequence && now.Avoid == caution.Avoid && Loudness(now) <= Loudness(caution);

    private static int Loudness(CautionRule caution) => SignalWords.All.ToList().IndexOf(caution.Word);

    private static IEnumerable<Weakening> Each<T>(
        ImmutableSortedDictionary<string, T> rules, ImmutableSortedDictionary<string, T> club, RuleKind kind, Func<T, Work> of)
        where T : class
    {
        if (ReferenceEquals(rules, club)) yield break;
        foreach (var (id, rule) in rules)
        {
            if (!club.TryGetValue(id, out var now) || ReferenceEquals(rule, now)) continue;
            foreach (var weakening in Between(new RuleKey(kind, id), of(rule), of(now))) yield return weakening;
        }
    }

    private static IEnumerable<Weakening> Between(RuleKey key, Work rule, Work now)
    {
        var whose = $"the {RuleKinds.Word(key.Kind)} '{key.Id}'";
        if (HazardWords.Levels[now.Hazard] < HazardWords.Levels[rule.Hazard])
            yield return new Weakening(SafetyRules.Hazard, key, $"{whose} has the hazard '{rule.Hazard}', and the club says '{now.Hazard}'.", "A club may call it more hazardous, not less.");
        if (rule.ForHelper is not null && now.ForHelper != rule.ForHelper)
            yield return new Weakening(SafetyRules.Hazard, key, $"{whose} is for a practised hand, and the club leaves that out or rewords it.", "Keep 'for helper' as it is.");
        if (rule.HandsOn && !now.HandsOn)
            yield return new Weakening(SafetyRules.HandsOff, key, $"{whose} puts hands near the machine, and the club says 'hands on: no'.", "Keep 'hands on: yes'.");
        foreach (var caution in rule.Cautions.Where(c => !now.Cautions.Any(n => Keeps(n, c))))
            yield return new Weakening(SafetyRules.Caution, key, $"{whose} has lost its caution '{caution.Word}: {caution.Hazard}', or has it milder or in other words.", "Put it back; you may add others.");
        foreach (var line in rule.Lines.Where(l => KeepsSafe().IsMatch(l) && !now.Lines.Contains(l)))
            yield return new Weakening(SafetyRules.SafeStep, key, $"{whose} has lost the line '{line}'.", "Put it back; you may add others.");
    }

    private static ImmutableArray<string> Steps(ImmutableArray<RepairStep> steps) =>
        [.. steps.Select(s => s.Do), .. steps.Select(s => s.Note).OfType<string>()];

    [GeneratedRegex(@"\b(?:engine off|plug cap|cold|cool|gloved?s?|goggles|glasses|mask|never|do not|don't|no flame|fingers|wheel still|helper)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex KeepsSafe();

    private sealed record Work(string Hazard, ImmutableArray<CautionRule> Cautions, ImmutableArray<string> Lines, bool HandsOn, string? ForHelper);
}
