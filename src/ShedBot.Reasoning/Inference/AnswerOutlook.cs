using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>
/// What a check would be answered if exactly a given set were present: P(said o | S) = sum_t P(t | S) lambda_t C[t][o] / sum_t P(t | S) lambda_t,
/// with lambda what is already known of the finding since the last repair.
/// </summary>
internal sealed class AnswerOutlook(DiagnosticModel model, Epoch now)
{
    public double[] Chances(int check, ReadOnlySpan<int> faults)
    {
        var asked = model.Checks[check];
        var finding = model.FindingAt(asked.Finding);
        var truths = model.ChancesOf(finding).Given(faults);
        if (now.Weights.TryGetValue(finding, out var lambda))
        {
            for (var truth = 0; truth < truths.Length; truth++) truths[truth] *= lambda[truth];
        }

        var total = 0.0;
        foreach (var truth in truths) total += truth;
        var said = new double[truths.Length];
        for (var truth = 0; truth < truths.Length; truth++)
        {
            for (var state = 0; state < said.Length; state++)
                said[state] += truths[truth] / total * AnswerChance.Of(asked.Error, said.Length, truth, state);
        }

        return said;
    }
}
