using System.Collections.Immutable;
using System.Runtime.InteropServices;
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
        var prepared = Prepare(model, epochs);
        var odds = model.Faults.Select(f => f.Prior / (1 - f.Prior)).ToArray();
        var bound = new LeftOutBound(model, odds, epochs, prepared);
        var most = Math.Min(Math.Max(options.RaiseTo, options.LargestSet), odds.Length);
        (FaultSets Sets, SetWeights Weights, double LeftOut)? found = null;
        for (var largest = Math.Min(options.LargestSet, odds.Length); largest <= most; largest++)
        {
            var joining = FaultSets.MostJoining(odds.Length, largest, options.MaxSets);
            if (largest > options.LargestSet && joining < Math.Min(odds.Length, FewestJoining)) break;
            var ranked = joining == odds.Length ? [.. Enumerable.Range(0, odds.Length)] : Relevance.Rank(odds, epochs, prepared);
            var sets = new FaultSets(ranked, joining, largest);
            var start = Products(sets, odds);
            var seen = Math.Log(start.Sum());
            if (Run(model, sets, start, epochs, prepared) is not { } weights) continue;
            var leftOut = bound.Share(sets, seen + weights.LogEvidence);
            found = (sets, weights, leftOut);
            if (leftOut <= options.RaiseAbove) break;
        }

        return found is { } last ? Make(model, last.Sets, last.Weights, last.LeftOut, epochs[^1], prepared) : throw new ImpossibleEvidenceException();
    }

    /// <summary>The belief when exactly one fault is present, the priors scaled to a sum of 1 (weight p_f, not p_f times the chance that all others are absent).</summary>
    /// <remarks><see cref="Belief.LeftOut"/> is 0: that there is one fault is taken as given, not approximated.</remarks>
    /// <inheritdoc cref="Infer(DiagnosticModel, IReadOnlyList{Evidence}, InferenceOptions?)"/>
    public static Belief InferSingle(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var epochs = Epoch.Split(model, evidence, Standing.Of(model, evidence));
        var prepared = Prepare(model, epochs);
        var sets = new FaultSets([.. Enumerable.Range(0, model.Faults.Length)], 1, 1);
        double[] start = [0, .. model.Faults.Select(f => f.Prior)];
        var weights = Run(model, sets, start, epochs, prepared) ?? throw new ImpossibleEvidenceException();
        return Make(model, sets, weights, 0, epochs[^1], prepared);
    }

    /// <summary>P(f | evidence, exactly one fault), aligned with the model's faults; adds up to 1.</summary>
    /// <inheritdoc cref="Infer(DiagnosticModel, IReadOnlyList{Evidence}, InferenceOptions?)"/>
    public static double[] SingleFault(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var belief = InferSingle(model, evidence);
        return [.. Enumerable.Range(0, model.Faults.Length).Select(belief.Marginal)];
    }

    private static double[] Products(FaultSets sets, double[] odds)
    {
        var products = new double[sets.Count];
        products[0] = 1;
        for (var node = 1; node < products.Length; node++) products[node] = products[sets.Parent[node]] * odds[sets.Added(node)];
        products[0] = 0;
        return products;
    }

    private static Dictionary<int, StateChances> Prepare(DiagnosticModel model, List<Epoch> epochs) =>
        epochs.SelectMany(e => e.Weights.Keys).Distinct().ToDictionary(finding => finding, finding => new StateChances(model, finding));

    /// <returns>Null when no set can give the evidence.</returns>
    private static SetWeights? Run(
        DiagnosticModel model, FaultSets sets, double[] start, List<Epoch> epochs, Dictionary<int, StateChances> prepared)
    {
        var weights = new SetWeights(sets, start);
        foreach (var epoch in epochs)
        {
            foreach (var (finding, lambda) in epoch.Weights)
            {
                if (!weights.Learn(prepared[finding], lambda)) return null;
            }

            if (epoch.EndedBy is { } failed && !weights.Mend(model, failed, Eased)) return null;
        }

        return weights;
    }

    private static Belief Make(
        DiagnosticModel model, FaultSets sets, SetWeights weights, double leftOut, Epoch now, Dictionary<int, StateChances> prepared)
    {
        var kept = new List<WeightedSet>();
        for (var node = 1; node < sets.Count; node++)
        {
            var weight = weights.Values[node];
            if (weight > Dust) kept.Add(new(ImmutableCollectionsMarshal.AsImmutableArray(sets.Members(node)), weight));
        }

        var ordered = Order(kept);
        var answers = new AnswerOutlook(model, ordered, now, prepared);
        return new(model, ordered, sets.Largest, leftOut, weights.LogEvidence, answers.Chances);
    }

    private static ImmutableArray<WeightedSet> Order(List<WeightedSet> kept)
    {
        var sets = kept.ToArray();
        Array.Sort(kept.ConvertAll(s => -s.Probability).ToArray(), sets);
        for (int from = 0, to = 1; from < sets.Length; from = to++)
        {
            while (to < sets.Length && sets[to].Probability == sets[from].Probability) to++;
            if (to - from > 1) Array.Sort(sets, from, to - from, Comparer<WeightedSet>.Create((a, b) => a.Faults.AsSpan().SequenceCompareTo(b.Faults.AsSpan())));
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(sets);
    }
}
