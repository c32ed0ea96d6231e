using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>From answers to probabilities: exact sums over every set of faults up to a bounded size.</summary>
/// <remarks>
/// <para>Faults are independent a priori, so a set S weighs the product of p_f / (1 - p_f) over S, times the likelihood of everything learnt;
/// the empty set is left out, because somebody has come with a trouble. See <see cref="Epoch"/> and <see cref="SetWeights"/> for how answers and
/// failed repairs enter, and <see cref="LeftOutBound"/> for what is promised about the sets that are not looked at.</para>
/// <para>Deterministic. Error of the sums themselves: about 1e-13 relative.</para>
/// </remarks>
public static class Inferrer
{
    /// <summary>P(a member says 'better' | the repair mended nothing); a rule of thumb, no source. See <see cref="RepairFailed"/>.</summary>
    public const double Eased = 0.05;

    // A set below this share of the whole is not handed on; all of them together are no more than 1e-11.
    private const double Dust = 1e-16;

    // Where not all larger sets fit, they are still worth a look if at least this many of the likeliest faults may stand together.
    private const int FewestJoining = 32;

    /// <summary>The belief when several faults may be present at once.</summary>
    /// <exception cref="ImpossibleEvidenceException">No set that was looked at can give this evidence.</exception>
    /// <exception cref="KeyNotFoundException">The evidence names something that the model does not hold.</exception>
    public static Belief Infer(DiagnosticModel model, IReadOnlyList<Evidence> evidence, InferenceOptions? options = null) =>
        Infer(model, evidence, Standing.Of(model, evidence), options ?? new());

    /// <summary>The same on a part of the evidence.</summary>
    /// <param name="counts">True for each piece to use; see <see cref="Standing"/>.</param>
    internal static Belief Infer(DiagnosticModel model, IReadOnlyList<Evidence> evidence, bool[] counts, InferenceOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.LargestSet, 1);
        var epochs = Epoch.Split(model, evidence, counts);
        var odds = model.Faults.Select(f => f.Prior / (1 - f.Prior)).ToArray();
        var bound = new Lazy<LeftOutBound>(() => new LeftOutBound(model, odds, epochs));
        var most = Math.Min(Math.Max(options.RaiseTo, options.LargestSet), odds.Length);
        Belief? found = null;
        for (var largest = Math.Min(options.LargestSet, odds.Length); largest <= most; largest++)
        {
            var joining = FaultSets.MostJoining(odds.Length, largest, options.MaxSets);
            if (largest > options.LargestSet && joining < Math.Min(odds.Length, FewestJoining)) break;
            if (Weigh(model, odds, epochs, joining, largest) is not var (sets, weights)) continue;
            found = Make(model, sets, weights, () => bound.Value.Share(sets, weights.LogStart + weights.LogEvidence), epochs[^1]);
            if (largest == most || found.LeftOut <= options.RaiseAbove) break;
        }

        return found ?? throw new ImpossibleEvidenceException();
    }

    /// <summary>The <see cref="Belief.LogEvidence"/> alone, for a bound that is not raised.</summary>
    /// <inheritdoc cref="Infer(DiagnosticModel, IReadOnlyList{Evidence}, bool[], InferenceOptions)"/>
    internal static double LogEvidence(DiagnosticModel model, IReadOnlyList<Evidence> evidence, bool[] counts, InferenceOptions options)
    {
        var odds = model.Faults.Select(f => f.Prior / (1 - f.Prior)).ToArray();
        var largest = Math.Min(options.LargestSet, odds.Length);
        var joining = FaultSets.MostJoining(odds.Length, largest, options.MaxSets);
        return Weigh(model, odds, Epoch.Split(model, evidence, counts), joining, largest)?.Weights.LogEvidence ?? throw new ImpossibleEvidenceException();
    }

    /// <summary>The belief when exactly one fault is present, the priors scaled to a sum of 1 (weight p_f, not p_f times the chance that all others are absent).</summary>
    /// <remarks><see cref="Belief.LeftOut"/> is 0: that there is one fault is taken as given, not approximated.</remarks>
    /// <inheritdoc cref="Infer(DiagnosticModel, IReadOnlyList{Evidence}, InferenceOptions?)"/>
    public static Belief InferSingle(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var epochs = Epoch.Split(model, evidence, Standing.Of(model, evidence));
        var sets = new FaultSets([.. Enumerable.Range(0, model.Faults.Length)], 1, 1);
        var weights = Run(model, sets, [.. model.Faults.Select(f => f.Prior)], epochs) ?? throw new ImpossibleEvidenceException();
        return Make(model, sets, weights, () => 0, epochs[^1]);
    }

    /// <summary>P(f | evidence, exactly one fault), aligned with the model's faults; adds up to 1.</summary>
    /// <inheritdoc cref="Infer(DiagnosticModel, IReadOnlyList{Evidence}, InferenceOptions?)"/>
    public static double[] SingleFault(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var belief = InferSingle(model, evidence);
        return [.. Enumerable.Range(0, model.Faults.Length).Select(belief.Marginal)];
    }

    private static (FaultSets Sets, SetWeights Weights)? Weigh(DiagnosticModel model, double[] odds, List<Epoch> epochs, int joining, int largest)
    {
        var ranked = joining == odds.Length ? [.. Enumerable.Range(0, odds.Length)] : Relevance.Rank(model, odds, epochs);
        var sets = new FaultSets(ranked, joining, largest);
        return Run(model, sets, odds, epochs) is { } weights ? (sets, weights) : null;
    }

    /// <returns>Null when no set can give the evidence.</returns>
    private static SetWeights? Run(DiagnosticModel model, FaultSets sets, double[] odds, List<Epoch> epochs)
    {
        var weights = new SetWeights(sets, odds);
        foreach (var epoch in epochs)
        {
            foreach (var (finding, lambda) in epoch.Weights)
            {
                if (!weights.Learn(model.ChancesOf(finding), lambda)) return null;
            }

            if (epoch.EndedBy is { } failed && !weights.Mend(model, failed, Eased)) return null;
        }

        return weights.Settle(Dust) ? weights : null;
    }

    private static Belief Make(DiagnosticModel model, FaultSets sets, SetWeights weights, Func<double> leftOut, Epoch now) =>
        new(model, new BelievedSets(sets, weights.Values), sets.Largest, leftOut, weights.LogEvidence, new AnswerOutlook(model, now));
}
