namespace ShedBot.Reasoning.Modelling;

/// <summary>What a fact about this machine does to the chance of a fault: logit P(f | fact) = logit P(f) + <paramref name="LogOdds"/>.</summary>
/// <param name="Fault">The id of the fault.</param>
/// <param name="LogOdds">Natural logarithm of the odds ratio: ln 3 makes the odds three times as high. Facts that overlap must not both count in full.</param>
public readonly record struct ContextShift(string Fault, double LogOdds);

/// <summary>Makes the model of this one machine out of the model of them all.</summary>
public static class MachineContext
{
    /// <summary>Moves the priors and takes out the faults that this machine cannot have.</summary>
    /// <remarks>Shifts of the same fault add up. Priors stay within [1e-9, 1 - 1e-9], so that no fact makes a fault certain or impossible.</remarks>
    /// <param name="removed">Ids of faults of parts that are not fitted: the one permitted zero. Their links and fixes go with them.</param>
    /// <returns>A model of its own: infer and plan with it. Indices differ from the model's where faults were removed; ids do not.</returns>
    /// <exception cref="KeyNotFoundException">A fault is named that the model does not hold.</exception>
    /// <exception cref="ArgumentException">No fault is left, or a shift is not a number.</exception>
    public static DiagnosticModel Apply(DiagnosticModel model, IEnumerable<ContextShift> shifts, IEnumerable<string> removed)
    {
        var logits = model.Faults.Select(f => Math.Log(f.Prior / (1 - f.Prior))).ToArray();
        foreach (var shift in shifts) logits[model.FaultAt(shift.Fault)] += shift.LogOdds;
        var gone = removed.Select(model.FaultAt).Select(at => model.Faults[at].Id).ToHashSet(StringComparer.Ordinal);
        return DiagnosticModel.Create(
            model.Faults.Select((f, i) => f with { Prior = Math.Clamp(1 / (1 + Math.Exp(-logits[i])), 1e-9, 1 - 1e-9) }).Where(f => !gone.Contains(f.Id)),
            model.Findings.Select(f => f with { Links = [.. f.Links.Where(l => !gone.Contains(l.Fault))] }),
            model.Checks,
            model.Repairs.Select(r => r with { Fixes = [.. r.Fixes.Where(f => !gone.Contains(f.Fault))] }),
            model.Covers,
            model.HelpCost);
    }
}
