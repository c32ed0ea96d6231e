namespace ShedBot.Reasoning.Evidences;

/// <summary>Turns the score of a reader of free text into virtual evidence (Pearl 1988, section 2.2.2).</summary>
/// <remarks>
/// A score is a posterior under the mix of messages that the reader was tuned on, not a likelihood: dividing its odds by the odds of the base
/// rate leaves the likelihood ratio. Virtual evidence fixes that ratio and commutes with other evidence; Jeffrey's rule would fix the new
/// P(finding) instead and would not.
/// </remarks>
public static class SoftEvidence
{
    /// <summary>No message counts for more than this many to one; a rule of thumb, no source.</summary>
    public const double Most = 10;

    /// <summary>The likelihood ratio yes : no, between 1/10 and 10.</summary>
    /// <param name="score">Calibrated P(finding | message), in [0, 1].</param>
    /// <param name="baseRate">How common the finding was among the messages the score was tuned on, in (0, 1).</param>
    public static double Ratio(double score, double baseRate)
    {
        if (score is not (>= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(score), score, "A score lies between 0 and 1.");
        if (baseRate is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(baseRate), baseRate, "A base rate lies between 0 and 1, both excluded.");
        return Math.Clamp(score * (1 - baseRate) / ((1 - score) * baseRate), 1 / Most, Most);
    }

    /// <summary>A hint that a yes/no finding is there, from a score.</summary>
    public static FindingHinted Hint(Modelling.Finding finding, double score, double baseRate) => finding.States.Length == 2
        ? new(finding.Id, [1, Ratio(score, baseRate)])
        : throw new ArgumentException($"'{finding.Id}' has {finding.States.Length} states; give its weights yourself.", nameof(finding));
}
