using System.Collections.Immutable;
using ShedBot.Coaching.Simulating;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Simulation.Report;

/// <summary>How far the beliefs at one point could be taken at their word.</summary>
/// <param name="Leading">Brier score of the chance given to the leading cause: one event, 0 best.</param>
/// <param name="AllCauses">The squares (p - o)^2 summed over all causes, each an event of its own, and averaged over riders; 0 best.</param>
/// <param name="Log">The mean of -ln of the chance given to each cause that is truly present, with the floor of the scores; 0 best.</param>
/// <param name="Error">Expected calibration error of the leading cause in five bins of about equal count; clearly above 0 on small samples even when honest.</param>
/// <param name="Bins">The bins of that error, lowest first.</param>
internal sealed record Calibrated(int Count, Figure Leading, Figure AllCauses, double Log, double Error, ImmutableArray<Bin> Bins)
{
    public const int BinCount = 5;

    /// <returns>Null when nobody came to this point.</returns>
    public static Calibrated? Of(IReadOnlyList<Believed> believed, int seed)
    {
        if (believed.Count == 0) return null;
        double[] leading = [.. believed.Select(b => Scores.Brier([b.Lead]))];
        double[] all = [.. believed.Select(b => Scores.Brier(b.All) * b.All.Length)];
        Forecast[] leads = [.. believed.Select(b => b.Lead)];
        return new Calibrated(
            believed.Count,
            Figure.Mean(leading, seed),
            Figure.Mean(all, seed),
            Scores.Log(believed.SelectMany(b => b.All).Where(f => f.Happened).Select(f => f.Probability).DefaultIfEmpty(1)),
            Scores.CalibrationError(leads, BinCount),
            Bin.Of(leads, BinCount));
    }
}

/// <summary>Forecasts of about the same chance, and how often they came true.</summary>
/// <param name="Said">Their mean chance.</param>
/// <param name="CameTrue">The share that came true, with its interval.</param>
internal sealed record Bin(int Count, double Said, Figure CameTrue)
{
    /// <summary>Bins of about equal count, lowest first.</summary>
    public static ImmutableArray<Bin> Of(IEnumerable<Forecast> forecasts, int bins) =>
        [.. new ForecastBins(forecasts).Of(bins).Select(b => new Bin(b.Count, b.Said, Figure.Share(b.Came, b.Count)))];
}
