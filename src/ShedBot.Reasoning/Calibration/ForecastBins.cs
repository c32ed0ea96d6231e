namespace ShedBot.Reasoning.Calibration;

/// <summary>Forecasts of about the same chance.</summary>
/// <param name="Count">How many, 1 or more.</param>
/// <param name="Said">Their mean chance, in [0, 1].</param>
/// <param name="Came">How many of them came true.</param>
public readonly record struct ForecastBin(int Count, double Said, int Came)
{
    /// <summary>How far what was said lies from what came, as a share.</summary>
    public double Gap => Math.Abs(Said - ((double)Came / Count));
}

/// <summary>Forecasts put in order once, to be parted into bins of about equal count, also many times over with other counts (as a bootstrap does).</summary>
/// <remarks>
/// Equal forecasts are never parted: were those that came true put into another bin than those that did not, honest forecasts would look wrong in both, and what the bins say would hang on
/// the order of the cases. They lie as a whole in the bin that the middle of them falls into; on a border, in the lower one. So there may be fewer bins than asked for.
/// </remarks>
public sealed class ForecastBins
{
    /// <summary>Chances are worked out in many ways that differ in the last digits; those alike to this many decimals count as equal.</summary>
    private const int Decimals = 9;

    private readonly (double Probability, (bool Happened, int At)[] Same)[] groups;

    /// <param name="forecasts">May be none.</param>
    public ForecastBins(IEnumerable<Forecast> forecasts)
    {
        groups = [.. forecasts.Select((f, at) => (f.Probability, f.Happened, At: at))
            .GroupBy(f => Math.Round(f.Probability, Decimals))
            .OrderBy(g => g.Key)
            .Select(g => (g.Average(f => f.Probability), g.Select(f => (f.Happened, f.At)).ToArray()))];
    }

    /// <param name="bins">At most so many, 1 or more.</param>
    /// <returns>Lowest first; none of no forecasts.</returns>
    public IReadOnlyList<ForecastBin> Of(int bins) => Of(groups.Sum(g => g.Same.Length), _ => 1, bins);

    /// <param name="counts">How often each forecast is taken, by its place in what was given; 0 or more.</param>
    /// <inheritdoc cref="Of(int)"/>
    public IReadOnlyList<ForecastBin> Of(IReadOnlyList<int> counts, int bins) => Of(counts.Sum(), at => counts[at], bins);

    private List<ForecastBin> Of(int total, Func<int, int> times, int bins)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bins, 1);
        var made = new List<ForecastBin>(bins);
        var (bin, before, inBin, said, came) = (-1L, 0L, 0, 0.0, 0);
        foreach (var (probability, same) in groups)
        {
            var (count, happened) = (0, 0);
            foreach (var (h, at) in same)
            {
                count += times(at);
                happened += h ? times(at) : 0;
            }

            if (count == 0) continue;
            var falls = ((bins * ((2 * before) + count)) - 1) / (2L * total);
            if (falls != bin) Close();
            (bin, before) = (falls, before + count);
            (inBin, said, came) = (inBin + count, said + (count * probability), came + happened);
        }

        Close();
        return made;

        void Close()
        {
            if (inBin > 0) made.Add(new ForecastBin(inBin, said / inBin, came));
            (inBin, said, came) = (0, 0, 0);
        }
    }
}
