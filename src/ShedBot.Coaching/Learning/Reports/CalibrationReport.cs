using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Simulating;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Whether the coach's chances could be taken at their word, at two points of mended cases.</summary>
/// <param name="Cases">Mended cases that were looked at. The others cannot be judged: nobody knows what was wrong.</param>
public sealed record CalibrationReport(int Cases, CalibrationPoint AfterComplaint, CalibrationPoint BeforeRepair)
{
    public const int MostBins = 5;

    public static CalibrationReport Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases) => From(knowledge, RetoldCase.All(knowledge, cases));

    internal static CalibrationReport From(KnowledgeBase knowledge, IEnumerable<RetoldCase> cases)
    {
        var judged = cases.Select(c => (Case: c, Cause: c.Cause()))
            .Where(c => c.Cause is not null)
            .Select(c => (c.Cause, After: c.Case.AfterComplaint(), Before: c.Case.BeforeRepair()))
            .Where(c => c.After is not null)
            .ToList();
        return new CalibrationReport(
            judged.Count,
            CalibrationPoint.Of([.. judged.Select(c => Lead(knowledge, c.After!.Value, c.Cause!))]),
            CalibrationPoint.Of([.. judged.Where(c => c.Before is not null).Select(c => Lead(knowledge, c.Before!.Value, c.Cause!))]));
    }

    private static Forecast Lead(KnowledgeBase knowledge, ImmutableArray<double> chances, string cause)
    {
        var lead = RetoldCase.Lead(knowledge, chances);
        return new Forecast(Math.Clamp(chances[knowledge.Model.FaultAt(lead)], 0, 1), lead == cause);
    }
}

/// <param name="Brier">Of the chance of the cause that led; 0 is best. NaN without cases.</param>
/// <param name="Error">Calibration error over the bins: the mean distance of what was said from what came true; clearly above 0 on small samples even when all is well. NaN without cases.</param>
/// <param name="Bins">Of about equal count, lowest first.</param>
public sealed record CalibrationPoint(int Cases, double Brier, double Error, ImmutableArray<CalibrationBin> Bins)
{
    internal static CalibrationPoint Of(IReadOnlyList<Forecast> forecasts)
    {
        if (forecasts.Count == 0) return new CalibrationPoint(0, double.NaN, double.NaN, []);
        var bins = CalibrationBin.Of(forecasts, CalibrationReport.MostBins);
        return new CalibrationPoint(forecasts.Count, Scores.Brier(forecasts), bins.Sum(b => b.Cases * Math.Abs(b.Said - b.CameTrue.Value)) / forecasts.Count, bins);
    }
}

/// <summary>Forecasts of about the same chance.</summary>
/// <param name="Said">Their mean.</param>
/// <param name="CameTrue">The share that came true, with its 95 % interval (Wilson 1927).</param>
public sealed record CalibrationBin(int Cases, double Said, Figure CameTrue)
{
    /// <summary>Fewer cases in a bin tell nothing.</summary>
    private const int LeastInBin = 4;

    /// <summary>Of about equal count, but cases of which the same was said stay together: a coach says the same of every rider with the same trouble, and to put those where it came
    /// true into another bin than those where it did not would make it look wrong in both.</summary>
    internal static ImmutableArray<CalibrationBin> Of(IReadOnlyList<Forecast> forecasts, int most)
    {
        var (bins, placed) = (new List<List<Forecast>>(), 0);
        var full = (double)forecasts.Count / Math.Clamp(forecasts.Count / LeastInBin, 1, most);
        foreach (var same in forecasts.GroupBy(f => Math.Round(f.Probability, 9)).OrderBy(g => g.Key))
        {
            if (bins.Count == 0 || (placed >= full * bins.Count && bins[^1].Count >= LeastInBin)) bins.Add([]);
            bins[^1].AddRange(same);
            placed += same.Count();
        }

        if (bins.Count > 1 && bins[^1].Count < LeastInBin)
        {
            bins[^2].AddRange(bins[^1]);
            bins.RemoveAt(bins.Count - 1);
        }

        return [.. bins.Select(b => new CalibrationBin(b.Count, b.Average(f => f.Probability), Figure.Share(b.Count(f => f.Happened), b.Count)))];
    }
}
