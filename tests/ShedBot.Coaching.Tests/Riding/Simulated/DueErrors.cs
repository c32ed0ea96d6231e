using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding.Simulated;

/// <summary>How far expected days were from the days on which it was truly ridden.</summary>
internal sealed record DueErrors(string Name, int Count, double Median, double Ninetieth, double Bias, double Covered, double PlainMedian)
{
    public const int Riders = 40, FirstEvening = 28, LastEvening = 400, Every = 11;

    /// <param name="need">How much more is to be ridden.</param>
    /// <param name="kilometres">In kilometres; else in riding days.</param>
    public static DueErrors Of(Habit habit, double need, bool kilometres)
    {
        var (errors, plain) = (new List<double>(), new List<double>());
        var covered = 0;
        for (var rider = 0; rider < Riders; rider++)
        {
            var year = new RiderYear(habit, 1000 + rider);
            for (var i = FirstEvening; i <= LastEvening; i += Every)
            {
                var evening = RiderYear.First.PlusDays(i);
                if (year.Truly(evening, need, r => kilometres ? r.Kilometres!.Value : 1) is not { } truly) continue;
                var log = year.LogOn(evening);
                var pace = PaceEstimator.Of(log, evening.PlusDays(1));
                if (pace.QuietSince is not null) continue;
                var expected = new Outlook(log, pace, evening.PlusDays(1)).When(need, kilometres ? pace.Kilometres : new Amount(1, 0));
                errors.Add(Period.DaysBetween(truly, expected.Expected ?? evening.PlusDays(Outlook.Days)));
                // Beside it: what the rider said, or what is usual, and nothing learnt.
                var days = (kilometres ? need / 10 : need) * 7 / (habit.StatedDays ?? 3);
                plain.Add(Period.DaysBetween(truly, evening.PlusDays((int)Math.Round(days))));
                if (truly >= expected.Earliest && !(truly > expected.Latest)) covered++;
            }
        }

        return new DueErrors(
            habit.Name, errors.Count, At(errors.Select(Math.Abs), 0.5), At(errors.Select(Math.Abs), 0.9), errors.Average(), covered / (double)errors.Count,
            At(plain.Select(Math.Abs), 0.5));
    }

    public static string Table(double need, bool kilometres) => string.Join('\n', Habit.All.Select(h => Of(h, need, kilometres)).Select(e => string.Create(
        CultureInfo.InvariantCulture,
        $"| {e.Name} | {e.Count} | {e.Median:0} | {e.Ninetieth:0} | {e.Bias:+0.0;-0.0;0.0} | {e.Covered * 100:0} % | {e.PlainMedian:0} |")));

    private static double At(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToArray();
        return sorted[(int)((sorted.Length - 1) * share)];
    }
}
