namespace ShedBot.Coaching.Riding;

/// <summary>The standard normal distribution.</summary>
internal static class NormalCurve
{
    /// <summary>P(Z ≤ z), within 7.5e-8.</summary>
    /// <remarks>Abramowitz and Stegun, Handbook of Mathematical Functions (1964), formula 26.2.17.</remarks>
    public static double Below(double z)
    {
        if (z < 0) return 1 - Below(-z);
        var t = 1 / (1 + (0.2316419 * z));
        var tail = t * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return 1 - (Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI) * tail);
    }
}
