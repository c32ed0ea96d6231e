using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>Entries of a riding log. The same entries in another order give the same days; each can be taken back while it is the last.</summary>
public static class RideLogging
{
    /// <summary>Adds a ride to its day. A break that the day lies in has ended on it.</summary>
    /// <param name="today">In the rider's zone.</param>
    /// <param name="fitted">When the kit was fitted, or null when that is not known.</param>
    /// <returns>
    /// The log after, or a refusal: <c>future</c>, <c>before-fitted</c>, <c>too-old</c>, <c>distance</c>, <c>time</c>.
    /// </returns>
    public static Result<RidingLog> Log(this RidingLog log, RiddenDay ride, LocalDate today, LocalDate? fitted, DateTimeOffset now)
    {
        if (ride.Day > today) return new Refusal("future", $"{Dates.Say(ride.Day)} is still to come. Log it once you have ridden.");
        if (ride.Day < fitted)
        {
            return new Refusal("before-fitted", $"The kit was fitted on {Dates.Say(fitted.Value)}; a ride on {Dates.Say(ride.Day)} was before it.");
        }

        if (ride.Day < today.PlusDays(-RidingLog.KeepsDays) || ride.Day <= log.Folded?.Last)
        {
            return new Refusal("too-old", $"{Dates.Say(ride.Day)} is too long ago: I keep single days for {RidingLog.KeepsDays} days.");
        }

        // Rounded first, so that nothing is kept that says "0 km".
        ride = ride.Rounded();
        var before = log.On(ride.Day);
        var after = before is null ? ride : before.And(ride);
        if (Unlikely(ride.Kilometres) || after.Kilometres > RiddenDay.MostKilometres)
        {
            return new Refusal("distance", $"A day's distance is above 0 and at most {RiddenDay.MostKilometres} km. Leave it out if you don't know.");
        }

        if (Unlikely(ride.Hours) || after.Hours > RiddenDay.MostHours)
        {
            return new Refusal("time", $"A day's riding time is above 0 and at most {RiddenDay.MostHours} hours. Leave it out if you don't know.");
        }

        var what = string.Join(", ", Amounts(ride).DefaultIfEmpty("a ride")) + " on " + Dates.Say(ride.Day);
        return log.Put(ride.Day, after).EndBreaks().Fold() with { Last = new RidingUndo(now, what, ride.Day, before, log.Breaks, log.Pace) };
    }

    /// <summary>Not riding from a day, till another or till further notice. Takes the place of every break that it touches.</summary>
    /// <param name="until">The first day of riding again, or null.</param>
    /// <returns>The log after, or a refusal: <c>empty-break</c>, <c>far-break</c>.</returns>
    public static Result<RidingLog> Break(this RidingLog log, LocalDate from, LocalDate? until, LocalDate today, DateTimeOffset now)
    {
        // Whoever says in the evening that they rest from now on has ridden today: the rest begins on the day after.
        while (log.On(from) is not null) from = from.PlusDays(1);
        if (until <= from) return new Refusal("empty-break", $"From {Dates.Say(from)} till {Dates.Say(until.Value)} is no break. Which day will you ride again?");
        var (first, last) = (today.PlusDays(-RidingLog.KeepsDays), today.PlusDays(RidingLog.KeepsDays));
        if (from < first || from > last || until > last)
        {
            return new Refusal("far-break", $"A break begins and ends within {RidingLog.KeepsDays} days of today. If you don't know the end, leave it out.");
        }

        var touched = log.Breaks.Where(b => !(b.Until < from) && !(b.From > until)).ToImmutableArray();
        var start = touched.Select(b => b.From).Append(from).Min();
        var others = log.Breaks.RemoveAll(b => touched.Contains(b) || b.Until < first);
        var what = until is { } end ? $"not riding till {Dates.Say(end)}" : "not riding till further notice";
        return (log with { Breaks = [.. others.Append(new RidingBreak(start, until)).OrderBy(b => b.From)] }).EndBreaks() with
        {
            Last = new RidingUndo(now, what, null, null, log.Breaks, log.Pace),
        };
    }

    /// <summary>Riding again: the break that today is in ends, though nothing is ridden yet.</summary>
    /// <returns>The log after, or the refusal <c>no-break</c>.</returns>
    public static Result<RidingLog> RideAgain(this RidingLog log, LocalDate today, DateTimeOffset now) => log.BreakOn(today) is not { } on
        ? new Refusal("no-break", "No break is noted for today.")
        : log with
        {
            Breaks = on.From == today ? log.Breaks.Remove(on) : log.Breaks.Replace(on, on with { Until = today }),
            Last = new RidingUndo(now, "riding again", null, null, log.Breaks, log.Pace),
        };

    /// <returns>The log after, or a refusal: <c>pace</c>, <c>distance</c>, <c>time</c>.</returns>
    public static Result<RidingLog> StatePace(this RidingLog log, StatedPace pace, DateTimeOffset now)
    {
        if (!(pace.DaysPerWeek > 0 && pace.DaysPerWeek <= 7)) return new Refusal("pace", "Days a week are above 0 and at most 7.");
        if (Unlikely(pace.KilometresPerDay) || pace.KilometresPerDay > RiddenDay.MostKilometres)
        {
            return new Refusal("distance", $"A day's distance is above 0 and at most {RiddenDay.MostKilometres} km.");
        }

        if (Unlikely(pace.HoursPerDay) || pace.HoursPerDay > RiddenDay.MostHours)
        {
            return new Refusal("time", $"A day's riding time is above 0 and at most {RiddenDay.MostHours} hours.");
        }

        return log with { Pace = pace, Last = new RidingUndo(now, "the stated pace", null, null, log.Breaks, log.Pace) };
    }

    /// <summary>Takes the last entry back. Days that it folded away stay folded; only one entry can be taken back.</summary>
    /// <returns>The log before the entry, or the refusal <c>nothing</c>.</returns>
    public static Result<RidingLog> Undo(this RidingLog log) => log.Last is not { } last
        ? new Refusal("nothing", "There is no entry to take back.")
        : (last.Day is { } day ? log.Put(day, last.Before) : log) with { Breaks = last.Breaks, Pace = last.Pace, Last = null };

    private static bool Unlikely(double? amount) => amount is { } a && !(a > 0 && double.IsFinite(a));

    private static IEnumerable<string> Amounts(RiddenDay ride)
    {
        if (ride.Kilometres is { } km) yield return km.ToString("0.#", CultureInfo.InvariantCulture) + " km";
        if (ride.Hours is { } h) yield return h.ToString("0.##", CultureInfo.InvariantCulture) + " h";
    }

    /// <summary>A break with a ridden day in it ended on that day.</summary>
    private static RidingLog EndBreaks(this RidingLog log) => log with
    {
        Breaks = log.Breaks.All(b => log.Days.All(d => !b.Covers(d.Day))) ? log.Breaks : [.. log.Breaks.Select(log.Ended).OfType<RidingBreak>()],
    };

    private static RidingBreak? Ended(this RidingLog log, RidingBreak rest) => log.Days.FirstOrDefault(d => rest.Covers(d.Day)) switch
    {
        null => rest,
        var first when first.Day == rest.From => null,
        var first => rest with { Until = first.Day },
    };

    /// <summary>By the newest ridden day and not by the clock, so that a clock that was wrong for a while costs nothing.</summary>
    private static RidingLog Fold(this RidingLog log)
    {
        var keep = log.Days[^1].Day.PlusDays(-RidingLog.KeepsDays);
        if (log.Days[0].Day >= keep) return log;
        var old = log.Days.TakeWhile(d => d.Day < keep).ToImmutableArray();
        return log with
        {
            Days = log.Days.RemoveRange(0, old.Length),
            Folded = old.Aggregate(log.Folded, FoldedRiding.With),
            Breaks = log.Breaks.RemoveAll(b => b.Until <= keep),
        };
    }
}
