using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>The weight of every set of faults, carried forward through the evidence.</summary>
/// <remarks>Weights are scaled back to a sum of 1 after each piece of evidence, so a long case does not run out of range.</remarks>
internal sealed class SetWeights
{
    private readonly FaultSets sets;
    private readonly double[] quiet, hazard, tilted;
    private double[] weights;

    /// <param name="start">One weight a node, 0 or more, not all 0.</param>
    public SetWeights(FaultSets sets, double[] start)
    {
        this.sets = sets;
        weights = start;
        quiet = new double[sets.Count];
        hazard = new double[sets.Count];
        tilted = new double[sets.Count];
        Scale();
        LogEvidence = 0;
    }

    /// <summary>Natural logarithm of P(everything learnt so far | the start).</summary>
    public double LogEvidence { get; private set; }

    /// <summary>P(exactly the set of a node | everything learnt so far).</summary>
    public ReadOnlySpan<double> Values => weights;

    /// <summary>Takes in what was said about one finding: weight *= sum over t of P(t | set) lambda_t.</summary>
    /// <returns>False when no set can give it.</returns>
    public bool Learn(StateChances finding, double[] lambda)
    {
        var faults = sets.FaultByRank;
        var quietOf = new double[faults.Length];
        for (var rank = 0; rank < faults.Length; rank++) quietOf[rank] = finding.Quiet(faults[rank]);
        quiet[0] = finding.QuietWithoutCause;
        for (var node = 1; node < quiet.Length; node++) quiet[node] = quiet[sets.Parent[node]] * quietOf[sets.Rank[node]];

        if (finding.States == 2)
        {
            var (rise, normal) = (lambda[1], lambda[0] - lambda[1]);
            for (var node = 1; node < weights.Length; node++) weights[node] *= rise + (normal * quiet[node]);
        }
        else
        {
            LearnStates(finding, lambda);
        }

        return Scale();
    }

    /// <summary>
    /// Takes in a repair that left trouble behind: each fault of the set that the repair can mend is mended with its own chance, apart from
    /// the others, and what is left is not empty. 'Better' is sure to be said when something was mended, and is said with
    /// <paramref name="eased"/> when nothing was.
    /// </summary>
    /// <returns>False when the repair cannot have left trouble behind.</returns>
    public bool Mend(DiagnosticModel model, RepairFailed failed, double eased)
    {
        var fixes = model.Repairs[model.RepairAt(failed.Repair)].Fixes
            .GroupBy(f => sets.RankOf(model.FaultAt(f.Fault)))
            .Where(g => g.Key >= 0)
            .ToDictionary(g => g.Key, g => 1 - g.Aggregate(1.0, (left, fix) => left * (1 - fix.Success)));
        var after = new double[weights.Length];
        Span<int> touched = stackalloc int[sets.Largest];
        Span<int> mended = stackalloc int[sets.Largest];
        for (var node = 1; node < weights.Length; node++)
        {
            if (weights[node] == 0) continue;
            var count = 0;
            for (var at = node; at != 0; at = sets.Parent[at])
            {
                if (fixes.ContainsKey(sets.Rank[at])) touched[count++] = sets.Rank[at];
            }

            for (var pick = 0; pick < 1 << count; pick++)
            {
                var chance = weights[node] * (pick == 0 && failed.Better ? eased : 1);
                var length = 0;
                for (var i = 0; i < count; i++)
                {
                    var success = fixes[touched[i]];
                    var isMended = (pick >> i & 1) == 1;
                    chance *= isMended ? success : 1 - success;
                    if (isMended) mended[length++] = touched[i];
                }

                after[sets.Without(node, mended[..length])] += chance;
            }
        }

        after[0] = 0;
        weights = after;
        return Scale();
    }

    private void LearnStates(StateChances finding, double[] lambda)
    {
        // P(v | set) = (1 - quiet) H_v / H, so all that is needed of the H_v is their sum and their sum tilted by lambda.
        var faults = sets.FaultByRank;
        var (sumOf, tiltedOf) = (new double[faults.Length], new double[faults.Length]);
        for (var rank = 0; rank < faults.Length; rank++) (sumOf[rank], tiltedOf[rank]) = Sums(finding.HazardsOf(faults[rank]), lambda);
        (hazard[0], tilted[0]) = Sums(finding.LeakHazards, lambda);
        for (var node = 1; node < weights.Length; node++)
        {
            var (parent, rank) = (sets.Parent[node], sets.Rank[node]);
            hazard[node] = hazard[parent] + sumOf[rank];
            tilted[node] = tilted[parent] + tiltedOf[rank];
            var abnormal = hazard[node] > 0 ? (1 - quiet[node]) * (tilted[node] / hazard[node]) : 0;
            weights[node] *= (lambda[0] * quiet[node]) + abnormal;
        }
    }

    private static (double Sum, double Tilted) Sums(ReadOnlySpan<double> hazards, double[] lambda)
    {
        var (sum, tilted) = (0.0, 0.0);
        for (var state = 1; state < hazards.Length; state++)
        {
            sum += hazards[state];
            tilted += hazards[state] * lambda[state];
        }

        return (sum, tilted);
    }

    private bool Scale()
    {
        var sum = 0.0;
        foreach (var weight in weights) sum += weight;
        if (!(sum > 0)) return false;
        for (var node = 0; node < weights.Length; node++) weights[node] /= sum;
        LogEvidence += Math.Log(sum);
        return true;
    }
}
