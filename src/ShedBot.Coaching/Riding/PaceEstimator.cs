using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>
/// Learns a rider's pace from the log. Each day outside breaks is ridden with some chance: Beta-Binomial, the prior centred on the stated pace (as good
/// as two weeks of log) or on what is usual (one week), the evidence halved for every six weeks of age, so that new habits win. Weekdays have chances of
/// their own, drawn to the common one as if by three weeks of log. Distance, time and weather of a riding day are weighted means drawn to a prior in the
/// same way. How much weeks differ beyond chance (bad weather, changed habits) is learnt too, and widens the doubt. Days of breaks neither count nor age, nor do silences that are too long to fit the pace. Pure.
/// </summary>
/// <remarks>The conjugate rule (prior counts plus observed counts) is in any textbook of Bayesian statistics; the strengths are common practice, no
/// source, and their worth is measured on simulated riders.</remarks>
public static class PaceEstimator
{
    private const double HalfLifeDays = 42, StatedDays = 14, UsualDays = 7, WeekdayWeeks = 3, AmountDays = 3, WeatherDays = 5, ClumpingWeight = 4;

    /// <param name="today">In the rider's zone. Today itself says nothing while it is not ridden: it is not over.</param>
    public static Pace Of(RidingLog log, LocalDate today)
    {
        var over = log.On(today) is null ? today.PlusDays(-1) : today;
        var end = log.LastDay is { } last && last > over ? last : over;
        if (log.Pace is not null) return Learn(log, end, Unlogged.In(log, end));
        var pace = WithoutSilences(log, end);
        if (log.LastDay is not { } quiet || Unlogged.Rested(log, quiet.PlusDays(1), end.PlusDays(1)) is var rest && rest == 0) return pace;
        // Nor does a silence that goes on tell anything of the pace.
        var before = WithoutSilences(log, quiet);
        return rest > UsualPace.QuietDays(before.DaysPerWeek / 7) ? before with { QuietSince = quiet } : pace;
    }

    private static Pace WithoutSilences(RidingLog log, LocalDate end)
    {
        var all = Learn(log, end, []);
        // Twice as long as fits, and a month at least: two wet weeks belong to the pace of whoever stays at home in them.
        var silences = Unlogged.Silences(log, Math.Max(28, 2 * UsualPace.QuietDays(all.DaysPerWeek / 7)));
        return silences.IsEmpty ? all : Learn(log, end, silences);
    }

    /// <param name="leaveOut">Stretches that say nothing of the pace.</param>
    private static Pace Learn(RidingLog log, LocalDate end, ImmutableArray<(LocalDate From, LocalDate To)> leaveOut)
    {
        var (seen, ridden) = (new double[7], new double[7]);
        var looked = new List<(int Weekday, bool Ridden, double Weight)>();
        var (km, hours) = (new Weighted(), new Weighted());
        var weathers = new double[3];
        var weight = 1.0;
        // The log begins with a ride because that is when logging begins: the first day tells nothing of how often there is one.
        for (var (day, i) = (end, log.Days.Length - 1); !log.Days.IsEmpty && day > log.Days[0].Day; day = day.PlusDays(-1))
        {
            while (i >= 0 && log.Days[i].Day > day) i--;
            var today = i >= 0 && log.Days[i].Day == day ? log.Days[i] : null;
            if (log.BreakOn(day) is not null || leaveOut.Any(u => u.From <= day && day <= u.To)) continue;
            var weekday = (int)day.DayOfWeek - 1;
            seen[weekday] += weight;
            looked.Add((weekday, today is not null, weight));
            if (today is not null)
            {
                ridden[weekday] += weight;
                Note(today);
            }

            weight *= Math.Exp(-Math.Log(2) / HalfLifeDays);
        }

        if (!log.Days.IsEmpty) Note(log.Days[0]);
        var prior = log.Pace is null ? UsualDays : StatedDays;
        var evidence = seen.Sum();
        var chance = ((prior * UsualPace.ChanceOf(log.Pace)) + ridden.Sum()) / (prior + evidence);
        var chances = seen.Zip(ridden, (n, r) => (r + (WeekdayWeeks * chance)) / (n + WeekdayWeeks)).ToArray();
        var clumping = Clumping(looked, chances);
        weathers[(int)Weather.Dry] += WeatherDays;
        return new Pace(
            [.. chances],
            chances.Sum(),
            clumping * (1 - chance) / (chance * (prior + evidence + 1)),
            clumping,
            km.Towards(UsualPace.KilometresOf(log.Pace, hours.Mean), AmountDays),
            hours.Towards(UsualPace.HoursOf(log.Pace, km.Mean), AmountDays),
            [.. weathers.Select(w => w / weathers.Sum())],
            evidence > prior ? PaceBasis.Logged : log.Pace is null ? PaceBasis.Usual : PaceBasis.Stated,
            evidence,
            null);

        void Note(RiddenDay day)
        {
            km.Add(day.Kilometres, weight);
            hours.Add(day.Hours, weight);
            weathers[(int)day.Weather] += weight;
        }
    }

    /// <summary>Squares of what a week's riding days are off, over what they would be off if each day were decided by itself; drawn to 1.</summary>
    private static double Clumping(List<(int Weekday, bool Ridden, double Weight)> looked, double[] chances)
    {
        var (squares, usual) = (ClumpingWeight, ClumpingWeight);
        foreach (var week in looked.Chunk(7))
        {
            var off = week.Sum(d => (d.Ridden ? 1 : 0) - chances[d.Weekday]);
            squares += week[0].Weight * off * off;
            usual += week[0].Weight * week.Sum(d => chances[d.Weekday] * (1 - chances[d.Weekday]));
        }

        return squares / usual;
    }

    /// <summary>A weighted mean and spread in the making.</summary>
    private sealed class Weighted
    {
        private double weights, sum, squares;

        public double? Mean => weights > 0 ? sum / weights : null;

        public void Add(double? amount, double weight)
        {
            if (amount is not { } a) return;
            weights += weight;
            sum += weight * a;
            squares += weight * a * a;
        }

        public Amount Towards(double usual, double strength)
        {
            var mean = ((strength * usual) + sum) / (strength + weights);
            var around = squares - (2 * mean * sum) + (mean * mean * weights);
            return new Amount(mean, ((strength * Math.Pow(UsualPace.Spread * usual, 2)) + Math.Max(0, around)) / (strength + weights));
        }
    }
}
