using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R102, R103: states at which the bike must not be ridden.</summary>
internal sealed class SafetyStops(KnowledgeBase under, KnowledgeBase club)
{
    /// <summary>How much longer the shortest check for a stop may become, as a factor and in minutes on top: our own choice.</summary>
    private const double MostTimes = 2, MostMore = 5;

    private const string LeastWord = "unlikely";

    public IEnumerable<Weakening> Look()
    {
        foreach (var finding in under.Findings.Values)
        {
            foreach (var state in finding.States.Where(s => s.StopRiding is not null))
            {
                var told = Told(finding.Id, state);
                if (told is not null) yield return told;
                else if (Reach(finding.Id, state.Id) is { } reach) yield return reach;
            }
        }
    }

    private Weakening? Told(string finding, StateRule state)
    {
        var key = new RuleKey(RuleKind.Finding, finding);
        var whose = $"'{finding}: {state.Id}'";
        if (!club.Findings.TryGetValue(finding, out var now) || now.States.FirstOrDefault(s => s.Id == state.Id) is not { } still)
            return Lost(key, $"{whose}, which means stop riding, is gone.");
        if (still.StopRiding != state.StopRiding || still.Says != state.Says)
            return Lost(key, $"{whose} means stop riding, and is told in other words.");
        if (state.RidersSay.FirstOrDefault(p => !still.RidersSay.Contains(p)) is { } phrase)
            return Lost(key, $"{whose}, which means stop riding, has lost its phrase '{phrase}'.");
        foreach (var check in Checks(under, finding))
        {
            if (club.Checks.TryGetValue(check.Id, out var again) && again.Answers.GetValueOrDefault(state.Id) != check.Answers.GetValueOrDefault(state.Id))
                return Lost(new RuleKey(RuleKind.Check, check.Id), $"the check '{check.Id}' tells {whose}, which means stop riding, in other words.");
        }

        return null;
    }

    private static Weakening Lost(RuleKey key, string what) => new(SafetyRules.Stop, key, what, "Leave it as the project has it.");

    private Weakening? Reach(string finding, string state)
    {
        var whose = $"'{finding}: {state}', which means stop riding,";
        var (checks, now) = (Checks(under, finding).ToList(), Checks(club, finding).ToList());
        if (checks.Count > 0)
        {
            var suspects = checks.Select(c => new RuleKey(RuleKind.Check, c.Id))
                .Concat(checks.Select(c => c.Cover).OfType<string>().Select(c => new RuleKey(RuleKind.Cover, c))).ToList();
            var hazard = checks.Min(c => HazardWords.Levels[c.Hazard]);
            var least = checks.Where(c => HazardWords.Levels[c.Hazard] == hazard).Min(c => Minutes(under, c));
            if (!now.Exists(c => HazardWords.Levels[c.Hazard] <= hazard))
                return Far(finding, suspects, $"{whose} is told by no check that is as safe as the project's.", "Keep the project's check, or write one that is as safe.");
            if (!now.Exists(c => HazardWords.Levels[c.Hazard] <= hazard && Minutes(club, c) <= (least * MostTimes) + MostMore))
                return Far(finding, suspects, $"{whose} takes much longer to find than the project's check does.", FormattableString.Invariant($"Stay within {(least * MostTimes) + MostMore:0.#} minutes, cover included."));
        }

        return Linked(finding, state, whose);
    }

    /// <summary>Without a fault that shows as it the coach would have no reason to ask.</summary>
    private Weakening? Linked(string finding, string state, string whose)
    {
        var strongest = under.Faults.Values.Select(f => Chance(f, finding, state)).Max();
        if (strongest == 0) return null;
        var wanted = Math.Min(strongest, ChanceWords.Chance(LeastWord));
        if (club.Faults.Values.Any(f => Chance(f, finding, state) >= wanted && !IsTakenOut(f))) return null;
        return Far(finding, [.. under.Faults.Values.Where(f => Chance(f, finding, state) > 0).Select(f => new RuleKey(RuleKind.Fault, f.Id))],
            $"no fault shows as {whose} any more, or only less than '{LeastWord}'.", "Keep one that does.");
    }

    private bool IsTakenOut(FaultRule fault) =>
        under.Faults.TryGetValue(fault.Id, out var before) && fault.MovedBy.Any(m => m.Times == 0 && !before.MovedBy.Contains(m));

    private static Weakening Far(string finding, IReadOnlyList<RuleKey> suspects, string what, string mend) =>
        new(SafetyRules.StopOutOfReach, new RuleKey(RuleKind.Finding, finding), what, mend) { Suspects = [.. suspects] };

    private static IEnumerable<CheckRule> Checks(KnowledgeBase rules, string finding) => rules.Checks.Values.Where(c => c.Tells == finding);

    private static double Minutes(KnowledgeBase rules, CheckRule check) =>
        check.Minutes + (check.Cover is { } cover && rules.Covers.TryGetValue(cover, out var opened) ? opened.Minutes : 0);

    private static double Chance(FaultRule fault, string finding, string state) =>
        fault.ShowsAs.TryGetValue(finding, out var states) && states.TryGetValue(state, out var word) && ChanceWords.TryChance(word, out var chance) ? chance : 0;
}
