using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Explaining;

/// <summary>Weighs each piece of evidence for and against each fault.</summary>
public static class Explainer
{
    /// <summary>Weights nearer to 0 than this many decibans (odds changed by less than an eighth) are not worth a word; a rule of thumb, no source.</summary>
    public const double Faint = 0.5;

    /// <summary>Explains the belief of <see cref="Inferrer.Infer(DiagnosticModel, IReadOnlyList{Evidence}, InferenceOptions?)"/>.</summary>
    /// <remarks>
    /// Takes two inferences for each piece of evidence, and so stays at the starting bound (<see cref="InferenceOptions.LargestSet"/>) in all of
    /// them, with at most 8,000 sets: weights then compare like with like. A piece that no longer counts (replaced, or a hint on what was then answered) has no weight.
    /// A failed repair that is left out still ends its stretch of answers.
    /// </remarks>
    /// <exception cref="ImpossibleEvidenceException">No set that was looked at can give this evidence.</exception>
    public static Explanation Explain(DiagnosticModel model, IReadOnlyList<Evidence> evidence, InferenceOptions? options = null)
    {
        var steady = (options ?? new()).Steady;
        var counts = Standing.Of(model, evidence);
        var all = Inferrer.Infer(model, evidence, counts, steady);
        var weights = new List<(int Evidence, Belief Without, Belief Before, Belief After)>();
        var before = Inferrer.Infer(model, evidence, new bool[evidence.Count], steady);
        for (var at = 0; at < evidence.Count; at++)
        {
            if (!counts[at]) continue;
            var after = Inferrer.Infer(model, evidence, [.. counts.Select((c, i) => c && i <= at)], steady);
            var without = Inferrer.Infer(model, evidence, [.. counts.Select((c, i) => c && i != at)], steady);
            weights.Add((at, without, before, after));
            before = after;
        }

        return new([.. model.Faults.Select((fault, f) =>
        {
            var reasons = weights
                .Select(w => new Reason(
                    w.Evidence,
                    Decibans.Between(w.Without.Marginal(f), all.Marginal(f)),
                    Decibans.Between(w.Before.Marginal(f), w.After.Marginal(f))))
                .Where(r => Math.Abs(r.Decibans) >= Faint)
                .OrderByDescending(r => Math.Abs(r.Decibans)).ThenBy(r => r.Evidence)
                .ToLookup(r => r.Decibans > 0);
            return new FaultReasons(fault.Id, all.Marginal(f), [.. reasons[true]], [.. reasons[false]]);
        })]);
    }
}
