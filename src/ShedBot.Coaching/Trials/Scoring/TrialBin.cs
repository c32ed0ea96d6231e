using System.Collections.Immutable;
using ShedBot.Coaching.Simulating;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>Beliefs of about the same chance, and how often they were right.</summary>
/// <param name="Said">Their mean chance.</param>
/// <param name="Came">The share that was right, with Wilson's 95 % interval.</param>
public sealed record TrialBin(int Count, double Said, double Came, double Low, double High)
{
    /// <summary>Bins of about equal count, lowest first.</summary>
    public static ImmutableArray<TrialBin> Of(IEnumerable<Forecast> forecasts) =>
    [
        .. new ForecastBins(forecasts).Of(Paired.Bins).Select(b =>
        {
            var share = Figure.Share(b.Came, b.Count);
            return new TrialBin(b.Count, b.Said, share.Value, share.Low, share.High);
        }),
    ];
}
