using System.Collections.Immutable;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Reasoning.Modelling;

/// <summary>A checked, immutable troubleshooting problem. Knows nothing of what the machine is.</summary>
public sealed class DiagnosticModel
{
    private DiagnosticModel(
        ImmutableArray<Fault> faults,
        ImmutableArray<Finding> findings,
        ImmutableArray<Check> checks,
        ImmutableArray<Repair> repairs,
        ImmutableArray<Cover> covers,
        double helpCost)
    {
        Faults = faults;
        Findings = findings;
        Checks = checks;
        Repairs = repairs;
        Covers = covers;
        HelpCost = helpCost;
        chances = new StateChances?[findings.Length];
        faultIndex = Index(faults, f => f.Id);
        findingIndex = Index(findings, f => f.Id);
        checkIndex = Index(checks, c => c.Id);
        repairIndex = Index(repairs, r => r.Id);
        coverIndex = Index(covers, c => c.Id);
    }

    private readonly Dictionary<string, int> faultIndex, findingIndex, checkIndex, repairIndex, coverIndex;

    private readonly StateChances?[] chances;

    public ImmutableArray<Fault> Faults { get; }

    public ImmutableArray<Finding> Findings { get; }

    public ImmutableArray<Check> Checks { get; }

    public ImmutableArray<Repair> Repairs { get; }

    public ImmutableArray<Cover> Covers { get; }

    /// <summary>What it costs to hand over to a human, in minutes. It always ends the case, and so sets how long the planner persists.</summary>
    public double HelpCost { get; }

    /// <exception cref="KeyNotFoundException">No such fault.</exception>
    public int FaultAt(string id) => At(faultIndex, id, "fault");

    /// <exception cref="KeyNotFoundException">No such finding.</exception>
    public int FindingAt(string id) => At(findingIndex, id, "finding");

    /// <exception cref="KeyNotFoundException">No such check.</exception>
    public int CheckAt(string id) => At(checkIndex, id, "check");

    /// <exception cref="KeyNotFoundException">No such repair.</exception>
    public int RepairAt(string id) => At(repairIndex, id, "repair");

    /// <exception cref="KeyNotFoundException">No such cover.</exception>
    public int CoverAt(string id) => At(coverIndex, id, "cover");

    /// <exception cref="KeyNotFoundException">No such finding, or the finding has no such state.</exception>
    public int StateAt(int finding, string state)
    {
        var at = Findings[finding].States.IndexOf(state);
        return at >= 0 ? at : throw new KeyNotFoundException($"Finding '{Findings[finding].Id}' has no state '{state}'.");
    }

    /// <summary>A finding prepared for quick use; made when first asked for, and kept.</summary>
    /// <remarks>Two threads may both prepare the same finding; they come to the same thing, and either may be kept.</remarks>
    internal StateChances ChancesOf(int finding) => chances[finding] ??= new StateChances(this, finding);

    /// <summary>Checks every reference and range, and builds the model.</summary>
    /// <exception cref="ArgumentException">Something does not fit; the message lists everything that does not.</exception>
    public static DiagnosticModel Create(
        IEnumerable<Fault> faults,
        IEnumerable<Finding> findings,
        IEnumerable<Check> checks,
        IEnumerable<Repair> repairs,
        IEnumerable<Cover> covers,
        double helpCost)
    {
        var model = (Faults: faults.ToImmutableArray(), Findings: findings.ToImmutableArray(), Checks: checks.ToImmutableArray(),
            Repairs: repairs.ToImmutableArray(), Covers: covers.ToImmutableArray());
        var problems = ModelProblems.Find(model.Faults, model.Findings, model.Checks, model.Repairs, model.Covers, helpCost);
        return problems.Count == 0
            ? new DiagnosticModel(model.Faults, model.Findings, model.Checks, model.Repairs, model.Covers, helpCost)
            : throw new ArgumentException("The model does not hold together: " + string.Join("; ", problems), nameof(faults));
    }

    private static Dictionary<string, int> Index<T>(ImmutableArray<T> items, Func<T, string> id)
    {
        var index = new Dictionary<string, int>(items.Length, StringComparer.Ordinal);
        for (var i = 0; i < items.Length; i++) index.Add(id(items[i]), i);
        return index;
    }

    private static int At(Dictionary<string, int> index, string id, string what) =>
        index.TryGetValue(id, out var at) ? at : throw new KeyNotFoundException($"No {what} is called '{id}'.");
}
