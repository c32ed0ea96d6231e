using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge.Rules;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Coaching.Service;

/// <summary>
/// What was ridden, day by day, in the measures and with the weather of a rule: logged days, days that were probably ridden without a word at the stated
/// pace, and older days as a total that is spread evenly over its time.
/// </summary>
internal sealed class Ledger
{
    private readonly FoldedRiding? folded;
    private readonly ImmutableArray<Entry> entries;

    public Ledger(RidingLog log, Pace pace, LocalDate today)
    {
        (Log, Pace, folded) = (log, pace, log.Folded);
        var until = log.On(today) is null ? today.PlusDays(-1) : today;
        if (log.LastDay > until) until = log.LastDay.Value;
        Next = until.PlusDays(1);
        var guessed = from stretch in Unlogged.In(log, until)
                      from day in Enumerable.Range(0, Period.DaysBetween(stretch.From, stretch.To) + 1).Select(stretch.From.PlusDays)
                      where log.BreakOn(day) is null
                      select new Entry(day, pace.ChanceOn(day), pace.Kilometres.Mean, pace.Hours.Mean, null);
        entries =
        [
            .. log.Days.Select(d => new Entry(d.Day, 1, d.Kilometres ?? pace.Kilometres.Mean, d.Hours ?? pace.Hours.Mean, d.Weather))
                .Concat(guessed).OrderBy(e => e.Day),
        ];
    }

    public RidingLog Log { get; }

    public Pace Pace { get; }

    /// <summary>The first day that is still to come.</summary>
    public LocalDate Next { get; }

    /// <summary>The first day of which riding is known or stated, or null.</summary>
    public LocalDate? Known => (Log.FirstDay, Log.Pace?.Since) switch
    {
        ({ } logged, { } stated) => LocalDate.Min(logged, stated),
        var (logged, stated) => logged ?? stated,
    };

    /// <summary>What a coming riding day adds for a rule.</summary>
    public Amount Each(ServiceRule rule, Measure measure)
    {
        var factors = Factors(rule);
        var mean = Pace.Weathers.Zip(factors, (share, factor) => share * factor).Sum();
        var variance = Pace.Weathers.Zip(factors, (share, factor) => share * Math.Pow(factor - mean, 2)).Sum();
        var (amount, own) = measure switch
        {
            Measure.Kilometres => (Pace.Kilometres.Mean, Pace.Kilometres.Variance),
            Measure.Hours => (Pace.Hours.Mean, Pace.Hours.Variance),
            _ => (1, 0),
        };
        // Weather and distance are taken as having nothing to do with each other: the variance of a product of two such quantities.
        return new Amount(mean * amount, (mean * mean * own) + (amount * amount * variance) + (own * variance));
    }

    /// <summary>True for a day whose rides are no longer kept one by one.</summary>
    public bool IsFolded(LocalDate day) => day <= folded?.Last;

    /// <summary>What was ridden after a day (or on and after it), up to and including another.</summary>
    /// <param name="until">Not folded.</param>
    /// <param name="allowed">The day on which this much was reached is told; above 0.</param>
    public Used Since(LocalDate anchor, bool included, LocalDate until, ServiceRule rule, Interval allowed)
    {
        var factors = Factors(rule);
        var sum = Old(anchor, included, factors, allowed.Measure);
        var estimated = sum > 0;
        var reached = sum >= allowed.Amount ? folded?.Last : null;
        foreach (var entry in entries)
        {
            if (entry.Day < anchor || (entry.Day == anchor && !included)) continue;
            if (entry.Day > until) break;
            sum += entry.Share * Amount(entry, allowed.Measure) * (entry.Weather is { } w ? factors[(int)w] : Usual(factors));
            estimated |= entry.Weather is null;
            // A hair less than the amount is the amount: tenths do not add up exactly.
            if (sum >= allowed.Amount - 1e-9) reached ??= entry.Day;
        }

        return new Used(sum, estimated, reached);
    }

    private double Usual(double[] factors) => Pace.Weathers.Zip(factors, (share, factor) => share * factor).Sum();

    private double Old(LocalDate anchor, bool included, double[] factors, Measure measure)
    {
        if (folded is not { } old || anchor > old.Last) return 0;
        var counted = Period.DaysBetween(LocalDate.Max(included ? anchor : anchor.PlusDays(1), old.First), old.Last) + 1;
        var share = (double)Math.Max(0, counted) / (Period.DaysBetween(old.First, old.Last) + 1);
        return share * old.Totals.Sum(t => factors[(int)t.Weather] * measure switch
        {
            Measure.Kilometres => t.Kilometres + ((t.Days - t.DaysWithKilometres) * Pace.Kilometres.Mean),
            Measure.Hours => t.Hours + ((t.Days - t.DaysWithHours) * Pace.Hours.Mean),
            _ => t.Days,
        });
    }

    private static double Amount(Entry entry, Measure measure) => measure switch
    {
        Measure.Kilometres => entry.Kilometres,
        Measure.Hours => entry.Hours,
        _ => 1,
    };

    private static double[] Factors(ServiceRule rule)
    {
        double[] factors = [1, 1, 1];
        foreach (var sooner in rule.Sooner)
        {
            if (Enum.TryParse<Weather>(sooner.Weather, ignoreCase: true, out var weather)) factors[(int)weather] = sooner.Factor;
        }

        return factors;
    }

    /// <param name="Share">1 for a logged day, else the chance that it was ridden.</param>
    /// <param name="Weather">Null for a day that was not logged.</param>
    private readonly record struct Entry(LocalDate Day, double Share, double Kilometres, double Hours, Weather? Weather);
}

/// <param name="Reached">The day on which the amount that was asked for was reached, or null.</param>
internal readonly record struct Used(double Amount, bool Estimated, LocalDate? Reached);
