namespace ShedBot.Reasoning.Explaining;

/// <summary>Weights of evidence in decibans (I. J. Good 1950): ten times the decimal logarithm of an odds ratio. 10 is tenfold odds, 3 about doubles them.</summary>
public static class Decibans
{
    // Keeps the odds of something that is certain on paper finite: 120 decibans either way.
    private const double Edge = 1e-12;

    /// <summary>The weight that moves one probability to the other.</summary>
    public static double Between(double before, double after) => OfOdds(after) - OfOdds(before);

    /// <summary>10 log10 [p / (1 - p)], between -120 and 120.</summary>
    public static double OfOdds(double probability)
    {
        var kept = Math.Clamp(probability, Edge, 1 - Edge);
        return 10 * Math.Log10(kept / (1 - kept));
    }

    /// <summary>The weight of one answer: 10 log10 [P(answer | f) / P(answer | not f)].</summary>
    public static double OfRatio(double givenFault, double givenNotFault) => 10 * Math.Log10(givenFault / givenNotFault);
}
