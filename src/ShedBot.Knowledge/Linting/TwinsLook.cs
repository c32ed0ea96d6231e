using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Linting;

/// <summary>R041: pairs of faults that no question can decide between.</summary>
internal static class TwinsLook
{
    /// <summary>Chances as near as this give an answer too little weight to decide by: 'very likely' and 'almost certain' are 0.095 apart.</summary>
    private const double Near = 0.10;

    public static void Look(LintContext lint)
    {
        // What a rider can be asked or comes with; a finding that nothing tells cannot tell faults apart.
        var askable = lint.Rules.Checks.Select(c => c.Rule.Tells).Concat(lint.Rules.Complaints.Select(c => c.Rule.Id)).ToHashSet(StringComparer.Ordinal);
        var repairs = lint.Rules.Faults.Select(f => f.Rule.Id).Distinct(StringComparer.Ordinal).ToDictionary(
            f => f, f => lint.Rules.Repairs.Where(r => r.Rule.Mends.ContainsKey(f)).Select(r => r.Rule.Id).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);
        foreach (var alike in lint.Rules.Faults.GroupBy(f => Outline(f, askable), StringComparer.Ordinal))
        {
            var faults = alike.ToList();
            for (var i = 0; i < faults.Count; i++)
            {
                for (var j = i + 1; j < faults.Count; j++)
                {
                    var (first, second) = (faults[i].Rule, faults[j].Rule);
                    if (first.Id == second.Id || repairs[first.Id].Overlaps(repairs[second.Id]) || !SameStrengths(first, second, askable)) continue;
                    lint.Tell(ReachRules.Twins, faults[j], faults[j].At("shows as"),
                        $"nothing tells '{second.Id}' from '{first.Id}' ({faults[i].File}:{faults[i].Node.Line}).",
                        "Add a finding that only one of them shows as, or mend both with one repair.");
                }
            }
        }
    }

    /// <summary>Which findings and states it shows as and which facts move it: faults that differ here are told apart, and need not be compared one by one.</summary>
    private static string Outline(Written<FaultRule> fault, HashSet<string> askable) => string.Join('|',
        fault.Rule.ShowsAs.Where(s => askable.Contains(s.Key)).SelectMany(s => s.Value.Keys.Select(v => $"{s.Key}:{v}"))
            .Concat(fault.Rule.MovedBy.Select(m => FormattableString.Invariant($"{m.Fact}={m.Value}*{m.Times}")))
            .Order(StringComparer.Ordinal));

    private static bool SameStrengths(FaultRule first, FaultRule second, HashSet<string> askable) => first.ShowsAs
        .Where(s => askable.Contains(s.Key))
        .All(s => s.Value.All(v =>
            ChanceWords.TryChance(v.Value, out var one) && ChanceWords.TryChance(second.ShowsAs[s.Key][v.Key], out var other) && Math.Abs(one - other) <= Near));
}
