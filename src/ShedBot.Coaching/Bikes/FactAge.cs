using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Bikes;

/// <summary>Facts age: by the calendar, and what wears by riding.</summary>
internal static class FactAge
{
    private const int DaysInWeek = 7, DaysInMonth = 30, DaysInYear = 365, SoonDays = 14, SoonWeeksInDays = 60;

    /// <param name="zone">The rider's own.</param>
    public static bool IsStale(SheetField field, BikeFact fact, BikeProfile bike, LocalDate today, DateTimeZone zone)
    {
        var learnt = RiderDays.Of(fact.Learnt, zone);
        return Period.DaysBetween(learnt, today) > field.Fresh.Days || bike.Riding.Days.Count(d => d.Day > learnt) > field.Fresh.RidingDays;
    }

    /// <summary>What is worth asking for: what is not known, and what is stale.</summary>
    public static bool IsWanted(SheetField field, BikeProfile bike, LocalDate today, DateTimeZone zone) =>
        !bike.Facts.TryGetValue(field.Id, out var fact) || !field.Kind.IsExact(fact.Value) || IsStale(field, fact, bike, today, zone);

    /// <returns>As in "8 months ago".</returns>
    public static string Ago(int days) => days switch
    {
        <= 0 => "today",
        1 => "yesterday",
        < SoonDays => $"{days} days ago",
        < SoonWeeksInDays => $"{days / DaysInWeek} weeks ago",
        < DaysInYear + DaysInMonth => $"{days / DaysInMonth} months ago",
        _ => $"{days / DaysInYear} {(days < 2 * DaysInYear ? "year" : "years")} ago",
    };
}
