using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R040, R042 to R048: what can never be found and what can never change anything. Names must fit together before this is asked.</summary>
internal static class ReachLook
{
    public static void Look(LintContext lint)
    {
        var rules = lint.Rules;
        var linked = rules.Faults.SelectMany(f => f.Rule.ShowsAs.Keys).ToHashSet(StringComparer.Ordinal);
        var told = rules.Checks.Select(c => c.Rule.Tells).ToHashSet(StringComparer.Ordinal);

        foreach (var fault in rules.Faults)
        {
            if (!fault.Rule.ShowsAs.IsEmpty && !fault.Rule.ShowsAs.Keys.Any(told.Contains))
                lint.Tell(ReachRules.FaultOutOfReach, fault, fault.At("shows as"), $"no check tells anything that '{fault.Rule.Id}' shows as.", "Add a check for one of its findings.");
            for (var i = 0; i < fault.Rule.MovedBy.Length; i++)
            {
                if (fault.Rule.MovedBy[i].Times == 1)
                    lint.Tell(ReachRules.IdleCondition, fault, fault.ItemAt("moved by", i), $"'times: 1' leaves '{fault.Rule.Id}' as likely as it was.", "Say how many times likelier it is, or take the line out.");
            }
        }

        foreach (var finding in rules.Findings)
        {
            var id = finding.Rule.Id;
            var stops = finding.Rule.States.Any(s => s.StopRiding is not null);
            if (!linked.Contains(id) && !stops)
                lint.Tell(ReachRules.UnlinkedFinding, finding, finding.At("id"), $"no fault shows as '{id}'.", "Name it under 'shows as' of a fault, or take it out.");
            if (!told.Contains(id)) Untold(lint, finding, stops);
        }

        var idle = rules.Findings.Where(f => !linked.Contains(f.Rule.Id) && f.Rule.States.All(s => s.StopRiding is null)).Select(f => f.Rule.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var check in rules.Checks.Where(c => idle.Contains(c.Rule.Tells)))
            lint.Tell(ReachRules.IdleCheck, check, check.At("tells"), $"the check '{check.Rule.Id}' tells '{check.Rule.Tells}', which no fault shows as.", "Name the finding under 'shows as' of a fault, or take the check out.");
        foreach (var complaint in rules.Complaints.Where(c => !linked.Contains(c.Rule.Id)))
            lint.Tell(ReachRules.ComplaintOfNothing, complaint, complaint.At("id"), $"no fault shows as the complaint '{complaint.Rule.Id}'.", "Name it under 'shows as' of every fault that gives it.");
        FactsAndCovers(lint);
    }

    private static void Untold(LintContext lint, Loading.Reading.Written<FindingRule> finding, bool stops)
    {
        var id = finding.Rule.Id;
        for (var i = 0; i < finding.Rule.States.Length; i++)
        {
            var state = finding.Rule.States[i];
            if (state.StopRiding is not null && state.RidersSay.IsEmpty)
                lint.Tell(WorkRules.StopUnseen, finding, finding.ItemAt("states", i), $"'{id}: {state.Id}' means stop riding, but nothing can tell it.", $"Add a check that tells '{id}', or phrases under 'riders say'.");
        }

        if (!stops && finding.Rule.States.All(s => s.RidersSay.IsEmpty))
            lint.Tell(ReachRules.UntoldFinding, finding, finding.At("id"), $"nothing can tell '{id}': no check does, and no state has phrases.", "Add a check, or phrases under 'riders say'.");
    }

    private static void FactsAndCovers(LintContext lint)
    {
        var rules = lint.Rules;
        var moving = rules.Faults.SelectMany(f => f.Rule.MovedBy).Select(m => m.Fact)
            .Concat(rules.Service.SelectMany(t => t.Rule.OnlyIf).Select(c => c.Fact)).ToHashSet(StringComparer.Ordinal);
        foreach (var fact in rules.Facts.Where(f => !moving.Contains(f.Rule.Id)))
            lint.Tell(ReachRules.IdleFact, fact, fact.At("id"), $"the fact '{fact.Rule.Id}' moves no fault.", "Name it under 'moved by' of a fault or 'only if' of a service task, or take it out.");
        var opened = rules.Checks.Select(c => c.Rule.Cover).Concat(rules.Repairs.Select(r => r.Rule.Cover)).ToHashSet(StringComparer.Ordinal);
        foreach (var cover in rules.Covers.Where(c => !opened.Contains(c.Rule.Id)))
            lint.Tell(ReachRules.UnusedCover, cover, cover.At("id"), $"nothing is behind the cover '{cover.Rule.Id}'.", "Name it in a check or a repair, or take it out.");
    }
}
