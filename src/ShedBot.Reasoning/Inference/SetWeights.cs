using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>The weight of every set of faults, carried forward through the evidence.</summary>
/// <remarks>Weights are scaled back to a sum of 1 every few pieces of evidence, so a long case does not run out of range.</remarks>
internal sealed class SetWeights
{
    /// <summary>So many findings are taken in before the weights are scaled back.</summary>
    private const int AtOnce = 8;

    private readonly FaultSets sets;
    private readonly double[] quiet, hazard, tilted, quietRun, hazardRun, tiltedRun;
    private double[] weights;
    private int unscaled;

    /// <summary>Before any evidence: a set weighs the product of its faults' odds, and the empty set nothing.</summary>
    /// <param name="odds">By fault, above 0.</param>
    public SetWeights(FaultSets sets, double[] odds)
    {
        this.sets = sets;
        weights = new double[sets.Count];
        weights[0] = 1;
        var oddsOf = ByRank(odds);
        for (var node = 0; node < sets.Inner; node++)
        {
            var (first, count, rank) = sets.Children(node);
            Runs.Product(weights.AsSpan(first, count), oddsOf.AsSpan(rank, count), weights[node]);
        }

        weights[0] = 0;
        (quiet, hazard, tilted) = (new double[sets.Inner], new double[sets.Inner], new double[sets.Inner]);
        (quietRun, hazardRun, tiltedRun) = (new double[oddsOf.Length], new double[oddsOf.Length], new double[oddsOf.Length]);
        Scale();
        LogStart = LogEvidence;
        LogEvidence = 0;
    }

    /// <summary>Natural logarithm of what the weights came to at first.</summary>
    public double LogStart { get; }

    /// <summary>Natural logarithm of P(everything taken in before the last scaling | the start).</summary>
    public double LogEvidence { get; private set; }

    /// <summary>P(exactly the set of a node | everything learnt so far), once <see cref="Settle"/> has ended it.</summary>
    public double[] Values => weights;

    /// <summary>Takes in what was said about one finding: weight *= sum over t of P(t | set) lambda_t.</summary>
    /// <returns>False when it turns out that no set can give what was said.</returns>
    public bool Learn(StateChances finding, double[] lambda)
    {
        var states = finding.States > 2;
        var (rise, normal) = (lambda[1], lambda[0] - lambda[1]);
        var faults = sets.FaultByRank;
        var (quietOf, sumOf, tiltedOf) = (ByRank(finding.Quiets), states ? new double[faults.Length] : [], states ? new double[faults.Length] : []);
        quiet[0] = finding.QuietWithoutCause;
        if (states)
        {
            // P(v | set) = (1 - quiet) H_v / H, so all that is needed of the H_v is their sum and their sum tilted by lambda.
            for (var rank = 0; rank < faults.Length; rank++) (sumOf[rank], tiltedOf[rank]) = Sums(finding.HazardsOf(faults[rank]), lambda);
            (hazard[0], tilted[0]) = Sums(finding.LeakHazards, lambda);
        }

        for (var node = 0; node < sets.Inner; node++)
        {
            var (first, count, rank) = sets.Children(node);
            var quiets = first < sets.Inner ? quiet.AsSpan(first, count) : quietRun.AsSpan(0, count);
            Runs.Product(quiets, quietOf.AsSpan(rank, count), quiet[node]);
            if (!states)
            {
                Runs.Tell(weights.AsSpan(first, count), quiets, rise, normal);
                continue;
            }

            var hazards = first < sets.Inner ? hazard.AsSpan(first, count) : hazardRun.AsSpan(0, count);
            var tilts = first < sets.Inner ? tilted.AsSpan(first, count) : tiltedRun.AsSpan(0, count);
            Runs.Sum(hazards, sumOf.AsSpan(rank, count), hazard[node]);
            Runs.Sum(tilts, tiltedOf.AsSpan(rank, count), tilted[node]);
            Runs.Tell(weights.AsSpan(first, count), quiets, hazards, tilts, lambda[0]);
        }

        return ++unscaled < AtOnce || Scale();
    }

    /// <summary>
    /// Takes in a repair that left trouble behind: each fault of the set that the repair can mend is mended with its own chance, apart from
    /// the others, and what is left is not empty. 'Better' is sure to be said when something was mended, and is said with
    /// <paramref name="eased"/> when nothing was.
    /// </summary>
    /// <returns>False when the repair cannot have left trouble behind.</returns>
    public bool Mend(DiagnosticModel model, RepairFailed failed, double eased)
    {
        var success = new double[model.Faults.Length];
        foreach (var fix in model.Repairs[model.RepairAt(failed.Repair)].Fixes)
        {
            var fault = model.FaultAt(fix.Fault);
            success[fault] = 1 - ((1 - success[fault]) * (1 - fix.Success));
        }

        var outcome = new MendOutcome(sets, ByRank(success), failed.Better ? eased : 1);
        weights = outcome.After(weights);
        return Scale();
    }

    /// <summary>Ends it: the weights add up to 1, but for those that are no more than <paramref name="least"/> and become 0.</summary>
    /// <returns>False when nothing has any weight.</returns>
    public bool Settle(double least)
    {
        if (unscaled > 0 && !Scale()) return false;
        Runs.Clear(weights, least);
        return true;
    }

    private bool Scale()
    {
        unscaled = 0;
        var sum = Runs.Total(weights);
        if (!(sum > 0)) return false;
        Runs.Divide(weights, sum);
        LogEvidence += Math.Log(sum);
        return true;
    }

    private double[] ByRank(ReadOnlySpan<double> byFault)
    {
        var faults = sets.FaultByRank;
        var byRank = new double[faults.Length];
        for (var rank = 0; rank < byRank.Length; rank++) byRank[rank] = byFault[faults[rank]];
        return byRank;
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
}
