using System.Globalization;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Service;

/// <summary>What a task is counted from.</summary>
/// <param name="Key">Names it for ever.</param>
/// <param name="Day">In the rider's zone.</param>
/// <param name="RidesOfTheDayCount">
/// True for the fitting: whatever was ridden that day came after it. A repair or a task comes after a day's ride more often than before it.
/// </param>
/// <param name="Says">As in "Done on 3 May 2026."</param>
internal sealed record Anchor(string Key, LocalDate Day, bool RidesOfTheDayCount, string Says)
{
    /// <summary>A log that begins later than so many days after the fitting has missed the first rides.</summary>
    private const int FirstRidesDays = 14;

    /// <summary>The newest time that the task, or a repair that counts as it, was done; or null.</summary>
    public static Anchor? Done(BikeProfile bike, ServiceRule rule, DateTimeZone zone) =>
        Newest(bike.Done.Where(d => d.Task == rule.Id).Select(Of).Concat(bike.Work.Where(w => rule.DoneBy.Contains(w.Repair)).Select(w => Of(w, zone))));

    /// <summary>The newest of the events, or null when none is known; the fitting only while the first rides after it are known.</summary>
    /// <param name="known">The first day of which riding is known, or today.</param>
    public static Anchor? Event(BikeProfile bike, ServiceAfter after, DateTimeZone zone, LocalDate known) => Newest(
        bike.Done.Where(d => after.Events.Contains(d.Task)).Select(Of)
            .Concat(bike.Work.Where(w => after.Events.Contains(w.Repair)).Select(w => Of(w, zone)))
            .Concat(after.Events.Contains(ServiceAfter.Fitted) && Fitting.DayOf(bike) is { } day && InTime(day, known) ? [Fitted(day)] : []));

    public static Anchor Fitted(LocalDate day) => new($"{ServiceAfter.Fitted}@{LocalDatePattern.Iso.Format(day)}", day, true, $"Fitted on {Dates.Say(day)}.");

    public static bool InTime(LocalDate fitted, LocalDate known) => known <= fitted.PlusDays(FirstRidesDays);

    private static Anchor Of(ServiceDone done) => new($"{done.Task}@{LocalDatePattern.Iso.Format(done.Day)}", done.Day, false, $"Last done on {Dates.Say(done.Day)}.");

    // By the second and not by the day: the day would change with the zone of a rider who moves.
    private static Anchor Of(WorkDone work, DateTimeZone zone) => new(
        string.Create(CultureInfo.InvariantCulture, $"{work.Repair}@{work.At.ToUnixTimeSeconds()}"),
        RiderDays.Of(work.At, zone),
        false,
        $"Counted from the repair on {Dates.Say(RiderDays.Of(work.At, zone))}.");

    /// <summary>Of two on one day the later in the list: a repair before a note of the same work.</summary>
    private static Anchor? Newest(IEnumerable<Anchor> anchors) => anchors.Aggregate((Anchor?)null, (best, a) => best is null || a.Day >= best.Day ? a : best);
}
