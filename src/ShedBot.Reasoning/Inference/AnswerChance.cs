using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>How a true state turns into what is said; see <see cref="AnswerError"/> for the rule.</summary>
public static class AnswerChance
{
    /// <summary>P(said | truth), in [0, 1]; the chances of all the states that can be said add up to 1.</summary>
    /// <param name="states">How many states the finding has, 2 or more; state 0 is the normal one.</param>
    /// <param name="truth">Index of the true state.</param>
    /// <param name="said">Index of the state that is said.</param>
    public static double Of(AnswerError error, int states, int truth, int said)
    {
        var wrong = truth == 0 ? error.FalsePositive : error.FalseNegative;
        return said == truth ? 1 - wrong : wrong / (states - 1);
    }

    /// <summary>P(said | each true state): what one answer tells about the truth.</summary>
    public static double[] Column(AnswerError error, int states, int said)
    {
        var column = new double[states];
        for (var truth = 0; truth < states; truth++) column[truth] = Of(error, states, truth, said);
        return column;
    }
}
