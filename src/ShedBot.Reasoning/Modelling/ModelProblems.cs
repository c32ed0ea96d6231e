using System.Collections.Immutable;

namespace ShedBot.Reasoning.Modelling;

/// <summary>Everything that keeps the parts of a model from fitting together, told in one go.</summary>
internal static class ModelProblems
{
    public static List<string> Find(
        ImmutableArray<Fault> faults,
        ImmutableArray<Finding> findings,
        ImmutableArray<Check> checks,
        ImmutableArray<Repair> repairs,
        ImmutableArray<Cover> covers,
        double helpCost)
    {
        var problems = new List<string>();
        Unique(faults.Select(f => f.Id), "fault", problems);
        Unique(findings.Select(f => f.Id), "finding", problems);
        Unique(checks.Select(c => c.Id), "check", problems);
        Unique(repairs.Select(r => r.Id), "repair", problems);
        Unique(covers.Select(c => c.Id), "cover", problems);
        if (faults.IsEmpty) problems.Add("there is no fault");
        if (faults.Count(f => f.IsOther) > 1) problems.Add("more than one fault stands for 'something else'");
        if (!(helpCost > 0)) problems.Add($"help costs {helpCost}; it must cost more than 0");

        var faultIds = faults.Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var findingIds = findings.Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var coverIds = covers.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var fault in faults.Where(f => !(f.Prior > 0 && f.Prior < 1)))
            problems.Add($"fault '{fault.Id}' has the prior {fault.Prior}; it must lie between 0 and 1, both excluded");
        foreach (var finding in findings) Finding(finding, faultIds, problems);
        foreach (var check in checks)
        {
            if (!findingIds.Contains(check.Finding)) problems.Add($"check '{check.Id}' observes '{check.Finding}', which is no finding");
            if (check.Error.FalsePositive is not (>= 0 and <= 0.5) || check.Error.FalseNegative is not (>= 0 and <= 0.5))
                problems.Add($"check '{check.Id}' has error rates outside 0 to 0.5");
            if (check.Unsure is not (>= 0 and < 1)) problems.Add($"check '{check.Id}' is unsure with {check.Unsure}; it must be 0 or more and below 1");
            Step($"check '{check.Id}'", check.Cost, check.Cover, coverIds, problems);
        }

        foreach (var repair in repairs)
        {
            foreach (var fix in repair.Fixes)
            {
                if (!faultIds.Contains(fix.Fault)) problems.Add($"repair '{repair.Id}' fixes '{fix.Fault}', which is no fault");
                if (!(fix.Success > 0 && fix.Success <= 1))
                    problems.Add($"repair '{repair.Id}' fixes '{fix.Fault}' with {fix.Success}; it must be above 0 and at most 1");
            }

            Step($"repair '{repair.Id}'", repair.Cost, repair.Cover, coverIds, problems);
        }

        return problems;
    }

    private static void Finding(Finding finding, HashSet<string> faults, List<string> problems)
    {
        var name = $"finding '{finding.Id}'";
        if (finding.States.Length < 2) problems.Add($"{name} has fewer than two states");
        Unique(finding.States, $"state of {name}", problems);
        Strengths($"{name}, leak", finding.Leak, finding.States.Length, mayBeSure: false, problems);
        Unique(finding.Links.Select(l => l.Fault), $"link of {name}", problems);
        foreach (var link in finding.Links)
        {
            if (!faults.Contains(link.Fault)) problems.Add($"{name} is linked to '{link.Fault}', which is no fault");
            Strengths($"{name}, link from '{link.Fault}'", link.Net, finding.States.Length, mayBeSure: true, problems);
        }
    }

    private static void Strengths(string name, ImmutableArray<double> values, int states, bool mayBeSure, List<string> problems)
    {
        if (values.Length != states)
        {
            problems.Add($"{name} has {values.Length} numbers for {states} states");
            return;
        }

        var sum = values.Skip(1).Sum();
        if (values.Skip(1).Any(v => !(v >= 0)) || (mayBeSure ? sum > 1 + 1e-9 : sum >= 1))
            problems.Add($"{name}: the strengths of the abnormal states must be 0 or more and add up to {(mayBeSure ? "at most" : "less than")} 1");
    }

    private static void Step(string name, StepCost cost, string? cover, HashSet<string> covers, List<string> problems)
    {
        if (!(cost.Minutes >= 0 && cost.Money >= 0 && cost.Effort >= 0)) problems.Add($"{name} has a cost below 0");
        if (cover is not null && !covers.Contains(cover)) problems.Add($"{name} is behind '{cover}', which is no cover");
    }

    private static void Unique(IEnumerable<string> ids, string what, List<string> problems)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var id in ids)
        {
            if (string.IsNullOrWhiteSpace(id)) problems.Add($"a {what} has no id");
            else if (!seen.Add(id)) problems.Add($"{what} '{id}' stands twice");
        }
    }
}
