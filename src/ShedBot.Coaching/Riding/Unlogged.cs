using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>
/// Days on which somebody who stated a pace probably rode without a word: from the first day of the pace to the first ride that is logged, and every
/// stretch outside breaks that is too long to fit the pace. Riding on them is counted as stated and is no evidence of anything. Somebody who stated no
/// pace has no such days.
/// </summary>
internal static class Unlogged
{
    /// <param name="until">The last day that is looked at.</param>
    /// <returns>Stretches, ascending; days of breaks in them are to be left out.</returns>
    public static ImmutableArray<(LocalDate From, LocalDate To)> In(RidingLog log, LocalDate until)
    {
        if (log.Pace is not { } pace) return [];
        var stretches = ImmutableArray.CreateBuilder<(LocalDate From, LocalDate To)>();
        var most = UsualPace.QuietDays(UsualPace.ChanceOf(pace));
        var first = true;
        var before = pace.Since.PlusDays(-1);
        if (log.Folded?.Last is { } folded && folded > before) (before, first) = (folded, false);
        foreach (var day in log.Days.Where(d => d.Day > before && d.Day <= until).Select(d => d.Day).Append(until.PlusDays(1)))
        {
            if (Rested(log, before.PlusDays(1), day) is var quiet && quiet > (first ? 0 : most)) stretches.Add((before.PlusDays(1), day.PlusDays(-1)));
            (before, first) = (day, false);
        }

        return stretches.ToImmutable();
    }

    /// <summary>
    /// Stretches between two rides that are too long to fit a pace. Somebody who stated none has most likely rested: they say nothing of the pace before and
    /// after.
    /// </summary>
    /// <param name="most">So many days outside breaks fit the pace.</param>
    public static ImmutableArray<(LocalDate From, LocalDate To)> Silences(RidingLog log, int most) =>
    [
        .. log.Days.Zip(log.Days.Skip(1), (one, next) => (From: one.Day.PlusDays(1), Next: next.Day))
            .Where(s => Rested(log, s.From, s.Next) > most).Select(s => (s.From, s.Next.PlusDays(-1))),
    ];

    /// <summary>Days outside breaks from one day up to, not including, another.</summary>
    public static int Rested(RidingLog log, LocalDate from, LocalDate to)
    {
        if (to <= from) return 0;
        var days = Period.DaysBetween(from, to);
        foreach (var rest in log.Breaks)
        {
            var (start, end) = (LocalDate.Max(rest.From, from), LocalDate.Min(rest.Until ?? to, to));
            if (end > start) days -= Period.DaysBetween(start, end);
        }

        return days;
    }
}
