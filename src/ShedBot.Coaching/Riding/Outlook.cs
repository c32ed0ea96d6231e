using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>When something will have been ridden.</summary>
/// <param name="Expected">The day by which it is as likely as not, by the mean pace; null when it is beyond <see cref="Outlook.Days"/>.</param>
/// <param name="Earliest">The day by which 1 of 10 such riders has ridden it.</param>
/// <param name="Latest">The day by which 9 of 10 have.</param>
public readonly record struct Expectation(LocalDate? Expected, LocalDate? Earliest, LocalDate? Latest);

/// <summary>
/// Looks ahead from a pace. What is ridden up to a day is a sum over its days, taken as normal: mean and variance of the riding days add up day by day
/// (each is ridden or not; times the clumping), a riding day's own amount has mean and variance, and the doubt about the rate is a log-normal factor that is summed over at
/// five points (Gauss-Hermite). Days of breaks add nothing. Built once for a bike, asked for every task.
/// </summary>
public sealed class Outlook
{
    /// <summary>So far it looks ahead; what is expected later is not dated.</summary>
    public const int Days = 1096;

    // Nodes and weights of the five-point rule for the standard normal (Abramowitz and Stegun, table 25.10, nodes times √2, weights over √π).
    private static readonly ImmutableArray<(double Node, double Weight)> Points =
        [(-2.856970, 0.0112574), (-1.355626, 0.2220759), (0, 0.5333333), (1.355626, 0.2220759), (2.856970, 0.0112574)];

    private readonly LocalDate from;
    private readonly double[] means = new double[Days], variances = new double[Days];
    private readonly double[] factors;

    /// <param name="from">The first day that is still to come: today, or tomorrow when today was ridden.</param>
    public Outlook(RidingLog log, Pace pace, LocalDate from)
    {
        this.from = from;
        var spread = Math.Sqrt(Math.Log(1 + pace.Doubt));
        factors = [.. Points.Select(p => Math.Exp(spread * p.Node))];
        var (mean, variance) = (0.0, 0.0);
        for (var i = 0; i < Days; i++)
        {
            var day = from.PlusDays(i);
            var chance = log.BreakOn(day) is null ? pace.ChanceOn(day) : 0;
            means[i] = mean += chance;
            variances[i] = variance += pace.Clumping * chance * (1 - chance);
        }
    }

    /// <param name="need">How much more; above 0.</param>
    /// <param name="each">What a riding day adds.</param>
    public Expectation When(double need, Amount each)
    {
        // Whole riding days: half a day less is the usual correction of a sum of whole numbers that is taken for smooth; and the middle of a waiting time
        // comes about a third of a ride before its mean (the median of a gamma distribution).
        var (smooth, middle) = each.Variance == 0 ? (need - (each.Mean / 2), need - (each.Mean / 3)) : (need, need);
        return new Expectation(First(i => means[i] * each.Mean >= middle), First(i => Chance(i, smooth, each) >= 0.1), First(i => Chance(i, smooth, each) >= 0.9));
    }

    /// <summary>The riding days that are expected up to a day, included.</summary>
    public double RiddenBy(LocalDate day) => day < from ? 0 : means[Math.Min(Days - 1, Period.DaysBetween(from, day))];

    private double Chance(int i, double need, Amount each)
    {
        var sum = 0.0;
        for (var p = 0; p < Points.Length; p++)
        {
            var mean = factors[p] * means[i] * each.Mean;
            var variance = factors[p] * ((variances[i] * each.Mean * each.Mean) + (means[i] * each.Variance));
            sum += Points[p].Weight * (variance > 0 ? NormalCurve.Below((mean - need) / Math.Sqrt(variance)) : mean >= need ? 1 : 0);
        }

        return sum;
    }

    /// <summary>Both the mean and the chance only grow with the days, so the first day is found by halving.</summary>
    private LocalDate? First(Func<int, bool> reached)
    {
        if (!reached(Days - 1)) return null;
        var (low, high) = (0, Days - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (reached(middle)) high = middle;
            else low = middle + 1;
        }

        return from.PlusDays(low);
    }
}
