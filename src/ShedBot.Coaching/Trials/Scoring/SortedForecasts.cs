using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>Forecasts put in order once, so that the calibration error of many drawings from them is quick.</summary>
internal sealed class SortedForecasts
{
    private readonly (Forecast Forecast, int At)[] ordered;

    public SortedForecasts(IEnumerable<Forecast> forecasts) =>
        ordered = [.. forecasts.Select((f, i) => (f, i)).OrderBy(f => f.f.Probability).ThenBy(f => f.f.Happened)];

    /// <summary>The expected calibration error (see <see cref="Scores.CalibrationError"/>) of the forecasts, each taken as often as its count says.</summary>
    /// <param name="counts">By the place of the forecast in what was given.</param>
    public double Error(int[] counts, int bins)
    {
        var total = counts.Sum();
        if (total == 0) return 0;
        var (error, bin, inBin, said, came) = (0.0, 0, 0, 0.0, 0.0);
        var room = Size(total, bins, 0);
        foreach (var (forecast, at) in ordered)
        {
            for (var left = counts[at]; left > 0;)
            {
                var taken = Math.Min(left, room - inBin);
                (said, came) = (said + (taken * forecast.Probability), came + (forecast.Happened ? taken : 0));
                (inBin, left) = (inBin + taken, left - taken);
                if (inBin < room) continue;
                error += Math.Abs(said - came) / total;
                (inBin, said, came) = (0, 0, 0);
                if (++bin < bins) room = Size(total, bins, bin);
            }
        }

        return error;
    }

    private static int Size(int total, int bins, int bin) => (total / bins) + (bin < total % bins ? 1 : 0);
}
