using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>How much of a bootstrap is cut off at each end for a 99 % interval.</summary>
internal static class Tails
{
    /// <summary>The normal quantile that leaves 0.5 % above it.</summary>
    private const double Z = 2.5758293035489004;

    /// <summary>
    /// 0.005 for very many cases and less for few: the expanded percentile interval of Hesterberg (2015, "What teachers should know about the bootstrap"),
    /// Phi(-sqrt(n / (n - 1)) t), with the quantile t of Student's distribution. Cases that do not differ tell nothing of the spread, so n counts the others.
    /// </summary>
    /// <param name="differ">1 or more.</param>
    public static double Each(int differ)
    {
        if (differ < 2) return 0;
        double n = differ;
        return NormalCurve.Below(-Math.Sqrt(n / (n - 1)) * Student(n - 1));
    }

    /// <summary>The 99.5 % quantile; Abramowitz and Stegun 1964, formula 26.7.5. Good to 1 % from five degrees of freedom on, and too small below.</summary>
    internal static double Student(double freedom)
    {
        double z3 = Z * Z * Z, z5 = z3 * Z * Z, z7 = z5 * Z * Z;
        return Z + ((z3 + Z) / (4 * freedom)) + (((5 * z5) + (16 * z3) + (3 * Z)) / (96 * freedom * freedom))
            + (((3 * z7) + (19 * z5) + (17 * z3) - (15 * Z)) / (384 * freedom * freedom * freedom));
    }
}
