using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>Holds old and new against each other case by case, with the percentile bootstrap (Efron 1979) of the difference: whole cases are drawn anew, so what both share falls out.</summary>
/// <remarks>The percentiles are taken further out where few cases differ (see <see cref="Tails"/>): as it stands the percentile interval is too narrow then.</remarks>
internal static class Paired
{
    public const int Bins = 5;

    private const int Resamples = 2000;

    private const int Seed = 20260;

    public static Compared Means(Measure measure, IReadOnlyList<(double Old, double New)> pairs)
    {
        if (pairs.Count == 0) return new Compared(measure, 0, 0, 0, 0, 0, 0);
        double[] differences = [.. pairs.Select(p => p.New - p.Old)];
        var differ = differences.Count(d => d != 0);
        var (low, high) = differ == 0 ? (0, 0) : Interval(pairs.Count, differ, counts =>
        {
            var sum = 0.0;
            for (var i = 0; i < differences.Length; i++) sum += counts[i] * differences[i];
            return sum / differences.Length;
        });
        var old = pairs.Average(p => p.Old);
        return new Compared(measure, pairs.Count, differ, old, differ == 0 ? old : pairs.Average(p => p.New), low, high);
    }

    /// <summary>The same for shares.</summary>
    public static Compared Shares(Measure measure, IEnumerable<(bool Old, bool New)> pairs) =>
        Means(measure, [.. pairs.Select(p => (p.Old ? 1.0 : 0, p.New ? 1.0 : 0))]);

    public static Compared Calibration(IReadOnlyList<(Forecast Old, Forecast New)> pairs)
    {
        if (pairs.Count == 0) return new Compared(Measure.CalibrationError, 0, 0, 0, 0, 0, 0);
        var (old, @new) = (new ForecastBins(pairs.Select(p => p.Old)), new ForecastBins(pairs.Select(p => p.New)));
        var differ = pairs.Count(p => p.Old != p.New);
        var (low, high) = differ == 0 ? (0, 0)
            : Interval(pairs.Count, differ, counts => Scores.CalibrationError(@new.Of(counts, Bins)) - Scores.CalibrationError(old.Of(counts, Bins)));
        return new Compared(Measure.CalibrationError, pairs.Count, differ, Scores.CalibrationError(old.Of(Bins)), Scores.CalibrationError(@new.Of(Bins)), low, high);
    }

    /// <param name="measure">Of the cases, each taken as often as its count says.</param>
    private static (double Low, double High) Interval(int cases, int differ, Func<int[], double> measure)
    {
        var chance = new Random(Seed);
        var drawn = new double[Resamples];
        var counts = new int[cases];
        for (var i = 0; i < Resamples; i++)
        {
            Array.Clear(counts);
            for (var j = 0; j < cases; j++) counts[chance.Next(cases)]++;
            drawn[i] = measure(counts);
        }

        Array.Sort(drawn);
        var tail = (int)(Tails.Each(differ) * Resamples);
        return (drawn[tail], drawn[Resamples - 1 - tail]);
    }
}
