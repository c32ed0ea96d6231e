using ShedBot.Reasoning.Inference;

namespace ShedBot.Reasoning.Explaining;

/// <summary>How unsure a belief is and what a check would tell, in bits. Blind to costs: good for display and for breaking ties, not for choosing a step.</summary>
public static class Information
{
    /// <summary>H = -sum p log2 p, with 0 log 0 = 0.</summary>
    public static double Entropy(IEnumerable<double> probabilities) => probabilities.Sum(p => p > 0 ? -p * Math.Log2(p) : 0);

    /// <summary>The entropy over the sets of faults; for an exactly-one-fault belief, over the faults.</summary>
    public static double Entropy(Belief belief) => Entropy(belief.Sets.Select(s => s.Probability));

    /// <summary>P(said state | everything learnt), one entry a state of the check's finding; 'not sure' is left out.</summary>
    public static double[] Predict(Belief belief, int check) => Weigh(belief, check).Said;

    /// <summary>The expected fall in entropy (de Kleer and Williams 1987): H - sum over o of P(o | e) H(after o), 'not sure' left out. Never below 0.</summary>
    public static double Gain(Belief belief, int check)
    {
        var (said, within) = Weigh(belief, check);
        return Math.Max(0, Entropy(said) - within);
    }

    // The same gain seen from the other side: entropy of the answer, less what is left of it once the set is known.
    private static (double[] Said, double Within) Weigh(Belief belief, int check)
    {
        var (said, within) = (Array.Empty<double>(), 0.0);
        for (var set = 0; set < belief.Sets.Length; set++)
        {
            var (chances, weight) = (belief.AnswerChances(check, set), belief.Sets[set].Probability);
            if (set == 0) said = new double[chances.Length];
            for (var state = 0; state < said.Length; state++) said[state] += weight * chances[state];
            within += weight * Entropy(chances);
        }

        return (said, within);
    }
}
