namespace ShedBot.Reasoning.Calibration;

/// <summary>How good forecasts were. The Brier and the log score are strictly proper (Gneiting and Raftery 2007): honesty pays best.</summary>
public static class Scores
{
    /// <summary>A probability below this is scored as this, so that one sure mistake does not make the log score infinite.</summary>
    public const double LogFloor = 0.001;

    /// <summary>Brier score for one event: the mean of (p - o)^2; 0 is best, 1 is worst.</summary>
    public static double Brier(IReadOnlyCollection<Forecast> forecasts) => forecasts.Average(f => Square(f.Probability - f.Outcome));

    /// <summary>Brier score for several classes (the form of Brier 1950): the mean over cases of the sum over classes of (p - o)^2; 0 to 2. Twice the one-event value for two classes.</summary>
    /// <param name="cases">The probabilities of all classes, and the index of the one that came true.</param>
    public static double BrierOverClasses(IReadOnlyCollection<(IReadOnlyList<double> Probabilities, int True)> cases) =>
        cases.Average(c => c.Probabilities.Select((p, i) => Square(p - (i == c.True ? 1 : 0))).Sum());

    /// <summary>The mean of -ln P(what came true), with <see cref="LogFloor"/>; 0 is best.</summary>
    public static double Log(IEnumerable<double> probabilitiesOfTruth) => probabilitiesOfTruth.Average(p => -Math.Log(Math.Max(p, LogFloor)));

    /// <summary>Expected calibration error: sum over bins of (n_b / N) |mean forecast - share that happened|, in bins of about equal count (<see cref="ForecastBins"/>).</summary>
    /// <remarks>Biased upwards on small samples: even perfect forecasts show a clearly positive value on 200 cases. Under about 500 prefer the Brier score.</remarks>
    /// <param name="bins">How many bins at most, 1 or more.</param>
    public static double CalibrationError(IEnumerable<Forecast> forecasts, int bins = 5) => CalibrationError(new ForecastBins(forecasts).Of(bins));

    /// <inheritdoc cref="CalibrationError(IEnumerable{Forecast}, int)"/>
    /// <returns>0 of no bins.</returns>
    public static double CalibrationError(IReadOnlyCollection<ForecastBin> bins) => bins.Count == 0 ? 0 : bins.Sum(b => b.Count * b.Gap) / bins.Sum(b => b.Count);

    /// <summary>Murphy 1973: Brier = reliability - resolution + uncertainty, exact because each bin here holds one forecast value.</summary>
    public static BrierParts Decompose(IReadOnlyCollection<Forecast> forecasts)
    {
        var rate = forecasts.Average(f => f.Outcome);
        var (reliability, resolution) = (0.0, 0.0);
        foreach (var bin in forecasts.GroupBy(f => f.Probability))
        {
            var (share, happened) = ((double)bin.Count() / forecasts.Count, bin.Average(f => f.Outcome));
            reliability += share * Square(bin.Key - happened);
            resolution += share * Square(happened - rate);
        }

        return new(reliability, resolution, rate * (1 - rate));
    }

    private static double Square(double x) => x * x;
}

/// <param name="Reliability">How far forecasts lie from what then happened; 0 is best.</param>
/// <param name="Resolution">How far they tell cases apart; more is better.</param>
/// <param name="Uncertainty">How hard the question was: rate (1 - rate).</param>
public readonly record struct BrierParts(double Reliability, double Resolution, double Uncertainty)
{
    public double Brier => Reliability - Resolution + Uncertainty;
}
