using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R021 to R023, R026: names that point at something, and states that exist.</summary>
internal static class References
{
    public static void Look(LintContext lint)
    {
        if (lint.Rules.Faults.IsEmpty) lint.TellAll(ReferenceRules.NothingThere, "there is no fault in any file.", "Add 'faults:' with at least one.");
        if (lint.Rules.Complaints.IsEmpty) lint.TellAll(ReferenceRules.NothingThere, "there is no complaint in any file.", "Add 'complaints:' with at least one.");
        foreach (var finding in lint.Rules.Findings) States(lint, finding, "seen anyway", finding.Rule.Id, finding.Rule.SeenAnyway.Keys, abnormalOnly: true);
        foreach (var fault in lint.Rules.Faults) Fault(lint, fault);
        foreach (var check in lint.Rules.Checks) Check(lint, check);
        foreach (var repair in lint.Rules.Repairs)
        {
            Cover(lint, repair, repair.Rule.Cover, $"the repair '{repair.Rule.Id}'");
            foreach (var fault in repair.Rule.Mends.Keys.Order(StringComparer.Ordinal))
            {
                if (!lint.Faults.ContainsKey(fault))
                    lint.Tell(ReferenceRules.Dangling, repair, repair.KeyAt("mends", fault), $"the repair '{repair.Rule.Id}' mends '{fault}', which is no fault.", Nearest.Ask(fault, lint.Faults.Keys));
            }
        }
    }

    private static void Fault(LintContext lint, Written<FaultRule> fault)
    {
        foreach (var (finding, states) in fault.Rule.ShowsAs.OrderBy(s => s.Key, StringComparer.Ordinal))
        {
            if (lint.States.ContainsKey(finding)) States(lint, fault, "shows as", finding, states.Keys, abnormalOnly: true);
            else
                lint.Tell(ReferenceRules.Dangling, fault, fault.KeyAt("shows as", finding), $"the fault '{fault.Rule.Id}' shows as '{finding}', which is no finding or complaint.", Nearest.Ask(finding, lint.States.Keys));
        }

        for (var i = 0; i < fault.Rule.MovedBy.Length; i++)
        {
            var condition = fault.Rule.MovedBy[i];
            if (condition.Fact.Length == 0) continue;
            if (!lint.Facts.TryGetValue(condition.Fact, out var fact))
                lint.Tell(ReferenceRules.Dangling, fault, fault.ItemAt("moved by", i), $"the fault '{fault.Rule.Id}' is moved by '{condition.Fact}', which is no fact.", Nearest.Ask(condition.Fact, lint.Facts.Keys));
            else if (condition.Value.Length > 0 && fact.Rule.Values.All(v => v.Id != condition.Value))
                lint.Tell(ReferenceRules.UnknownState, fault, fault.ItemAt("moved by", i), $"the fact '{condition.Fact}' has no value '{condition.Value}'.", Nearest.AskOrList(condition.Value, [.. fact.Rule.Values.Select(v => v.Id)]));
        }
    }

    private static void Check(LintContext lint, Written<CheckRule> check)
    {
        Cover(lint, check, check.Rule.Cover, $"the check '{check.Rule.Id}'");
        if (check.Rule.Tells.Length == 0) return;
        if (lint.States.ContainsKey(check.Rule.Tells)) States(lint, check, "answers", check.Rule.Tells, check.Rule.Answers.Keys, abnormalOnly: false);
        else
            lint.Tell(ReferenceRules.Dangling, check, check.At("tells"), $"the check '{check.Rule.Id}' tells '{check.Rule.Tells}', which is no finding or complaint.", Nearest.Ask(check.Rule.Tells, lint.States.Keys));
    }

    private static void States<T>(LintContext lint, Written<T> rule, string key, string finding, IEnumerable<string> states, bool abnormalOnly)
    {
        if (!lint.States.TryGetValue(finding, out var known)) return;
        foreach (var state in states.Order(StringComparer.Ordinal))
        {
            var at = key == "shows as" ? rule.KeyAt(key, finding, state) : rule.KeyAt(key, state);
            if (!known.Contains(state))
                lint.Tell(ReferenceRules.UnknownState, rule, at, $"'{finding}' has no state '{state}'.", Nearest.AskOrList(state, known));
            else if (abnormalOnly && state == known[0])
                lint.Tell(ReferenceRules.NormalState, rule, at, $"'{state}' is the normal state of '{finding}'; '{key}' takes only the others.", $"It can be: {string.Join(", ", known.Skip(1))}.");
        }
    }

    private static void Cover<T>(LintContext lint, Written<T> rule, string? cover, string whose)
    {
        if (cover is not null && !lint.Covers.ContainsKey(cover))
            lint.Tell(ReferenceRules.Dangling, rule, rule.At("cover"), $"{whose} is behind '{cover}', which is no cover.", Nearest.Ask(cover, lint.Covers.Keys));
    }
}
