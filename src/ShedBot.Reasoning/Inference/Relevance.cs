using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>Which faults matter most in the light of the evidence, for choosing the ones that larger sets are built from.</summary>
internal static class Relevance
{
    // Keeps a fault that explains one of several findings ahead of one that explains none, where no fault explains them all.
    private const double Least = 1e-6;

    /// <summary>Fault indices by falling prior odds times likelihood of the evidence if it were the only fault; ties by index.</summary>
    public static int[] Rank(DiagnosticModel model, double[] odds, List<Epoch> epochs)
    {
        var scores = new double[odds.Length];
        for (var fault = 0; fault < scores.Length; fault++)
        {
            scores[fault] = Math.Log(odds[fault]);
            foreach (var (finding, lambda) in epochs.SelectMany(e => e.Weights))
            {
                var likelihood = 0.0;
                var truths = model.ChancesOf(finding).Given([fault]);
                for (var truth = 0; truth < truths.Length; truth++) likelihood += truths[truth] * lambda[truth];
                scores[fault] += Math.Log(Math.Max(likelihood, Least));
            }
        }

        return [.. Enumerable.Range(0, scores.Length).OrderByDescending(f => scores[f]).ThenBy(f => f)];
    }
}
