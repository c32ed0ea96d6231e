using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>
/// What a check would be answered if exactly a given set were present: P(said o | S) = sum_t P(t | S) lambda_t C[t][o] / sum_t P(t | S) lambda_t,
/// with lambda what is already known of the finding since the last repair.
/// </summary>
internal sealed class AnswerOutlook(
    DiagnosticModel model, ImmutableArray<WeightedSet> sets, Epoch now, Dictionary<int, StateChances> prepared)
{
    private readonly StateChances?[] chances = new StateChances?[model.Findings.Length];

    public double[] Chances(int check, int set)
    {
        var asked = model.Checks[check];
        var finding = model.FindingAt(asked.Finding);
        var truths = Of(finding).Given(sets[set].Faults.AsSpan());
        if (now.Weights.TryGetValue(finding, out var lambda))
        {
            for (var truth = 0; truth < truths.Length; truth++) truths[truth] *= lambda[truth];
        }

        var (total, said) = (truths.Sum(), new double[truths.Length]);
        for (var truth = 0; truth < truths.Length; truth++)
        {
            for (var state = 0; state < said.Length; state++)
                said[state] += truths[truth] / total * AnswerChance.Of(asked.Error, said.Length, truth, state);
        }

        return said;
    }

    // Two threads may both prepare the same finding; they come to the same thing, and either may be kept.
    private StateChances Of(int finding) =>
        chances[finding] ??= prepared.TryGetValue(finding, out var made) ? made : new StateChances(model, finding);
}
