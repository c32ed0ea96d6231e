namespace ShedBot.Coaching.Simulating;

/// <summary>An estimate with its 95 % interval.</summary>
public readonly record struct Figure(double Value, double Low, double High)
{
    /// <summary>The normal quantile that leaves 2.5 % above it.</summary>
    private const double Z = 1.959963984540054;

    private const int Resamples = 2000;

    /// <summary>A share with Wilson's score interval (Wilson 1927), which stays within [0, 1] and serves small counts.</summary>
    /// <param name="count">0 or more, at most <paramref name="of"/>.</param>
    /// <returns>All NaN when there is nothing to take a share of.</returns>
    public static Figure Share(int count, int of)
    {
        if (of == 0) return new(double.NaN, double.NaN, double.NaN);
        double n = of, p = count / n;
        var middle = (p + (Z * Z / (2 * n))) / (1 + (Z * Z / n));
        var half = Z / (1 + (Z * Z / n)) * Math.Sqrt((p * (1 - p) / n) + (Z * Z / (4 * n * n)));
        return new(p, Math.Max(0, middle - half), Math.Min(1, middle + half));
    }

    /// <summary>A mean with the percentile bootstrap (Efron 1979).</summary>
    /// <param name="seed">Of the resampling, so that the interval can be repeated.</param>
    public static Figure Mean(IReadOnlyList<double> values, int seed) => Bootstrap(values.Count, at => at.Average(i => values[i]), seed);

    /// <summary>The mean of one list over the mean of another that is paired with it.</summary>
    public static Figure Ratio(IReadOnlyList<double> above, IReadOnlyList<double> below, int seed) =>
        Bootstrap(above.Count, at => at.Sum(i => above[i]) / at.Sum(i => below[i]), seed);

    /// <param name="measure">Of the cases with these indices, repeats counted.</param>
    public static Figure Bootstrap(int count, Func<int[], double> measure, int seed)
    {
        if (count == 0) return new(double.NaN, double.NaN, double.NaN);
        var random = new Random(seed);
        var drawn = new double[Resamples];
        var at = new int[count];
        for (var i = 0; i < Resamples; i++)
        {
            for (var j = 0; j < count; j++) at[j] = random.Next(count);
            drawn[i] = measure(at);
        }

        Array.Sort(drawn);
        return new(measure([.. Enumerable.Range(0, count)]), drawn[(int)(0.025 * Resamples)], drawn[(int)(0.975 * Resamples)]);
    }

    /// <summary>The value below which so large a share of the values lies (nearest rank).</summary>
    public static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? double.NaN : sorted[Math.Clamp((int)Math.Ceiling(share * sorted.Count) - 1, 0, sorted.Count - 1)];
    }
}
