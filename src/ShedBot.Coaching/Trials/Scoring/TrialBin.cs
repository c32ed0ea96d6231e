using System.Collections.Immutable;
using ShedBot.Coaching.Simulating;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>Beliefs of about the same chance, and how often they were right.</summary>
/// <param name="Said">Their mean chance.</param>
/// <param name="Came">The share that was right, with Wilson's 95 % interval.</param>
public sealed record TrialBin(int Count, double Said, double Came, double Low, double High)
{
    /// <summary>Bins of equal count, lowest first; the first ones take what does not divide.</summary>
    public static ImmutableArray<TrialBin> Of(IEnumerable<Forecast> forecasts)
    {
        var ordered = forecasts.OrderBy(f => f.Probability).ThenBy(f => f.Happened).ToList();
        var made = ImmutableArray.CreateBuilder<TrialBin>();
        for (var (bin, start) = (0, 0); bin < Paired.Bins && start < ordered.Count; bin++)
        {
            var inside = ordered.GetRange(start, (ordered.Count / Paired.Bins) + (bin < ordered.Count % Paired.Bins ? 1 : 0));
            if (inside.Count == 0) break;
            var share = Figure.Share(inside.Count(f => f.Happened), inside.Count);
            made.Add(new TrialBin(inside.Count, inside.Average(f => f.Probability), share.Value, share.Low, share.High));
            start += inside.Count;
        }

        return made.ToImmutable();
    }
}
