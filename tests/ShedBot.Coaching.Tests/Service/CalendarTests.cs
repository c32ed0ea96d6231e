using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>
/// Calendar intervals beside an independent iCalendar library (Ical.Net, RFC 5545 section 3.3.10) on the recurrences that both know: every so many days, in
/// which leap days and month ends fall. Tasks have no intervals in months or years, so rules of that kind do not overlap.
/// </summary>
public sealed class CalendarTests
{
    [Theory]
    [InlineData("2023-12-31", 1)]
    [InlineData("2024-01-31", 29)]
    [InlineData("2024-02-29", 365)]
    [InlineData("2023-02-28", 366)]
    [InlineData("2025-10-12", 14)]
    [InlineData("2026-03-01", 30)]
    [InlineData("1999-12-31", 90)]
    [InlineData("2096-12-31", 183)]
    public void Of_TaskDoneWheneverItIsDue_FallsDueOnTheRecurrencesOfRfc5545(string start, int every)
    {
        var day = NodaTime.Text.LocalDatePattern.Iso.Parse(start).Value;
        var expected = Recurring(new CalDateTime(day.Year, day.Month, day.Day), every).Take(40).ToArray();
        var bike = Bike.Did(day);
        foreach (var next in expected.Skip(1))
        {
            var item = bike.Only(day, Task(every: Calendar(every)));
            Assert.Equal(next, item.Expected);
            Assert.NotEqual(DueState.Due, bike.Only(next.PlusDays(-1), Task(every: Calendar(every))).State);
            Assert.Equal(DueState.Due, bike.Only(next, Task(every: Calendar(every))).State);
            (bike, day) = (bike.Did(next), next);
        }
    }

    /// <summary>A reminder at nine in the morning of the zone, as RFC 5545 has it, falls on the due day of that zone through both changes of the clocks.</summary>
    [Theory]
    [InlineData("Europe/Lisbon")]
    [InlineData("America/New_York")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("Asia/Kathmandu")]
    public void Of_AcrossSummerTime_FallsOnTheDayOfTheZonedRecurrence(string zone)
    {
        var (day, tz) = (new LocalDate(2026, 1, 3), DateTimeZoneProviders.Tzdb[zone]);
        var repeats = new CalendarEvent { Start = new CalDateTime(2026, 1, 3, 9, 0, 0, zone) };
        repeats.RecurrenceRule = new RecurrenceRule("FREQ=DAILY;INTERVAL=13");
        foreach (var instant in repeats.GetOccurrences().Skip(1).Take(30).Select(o => new DateTimeOffset(o.Period.StartTime.AsUtc)))
        {
            var due = Bike.Did(day).Only(day, Task(every: Calendar(13))).Expected;
            Assert.Equal(RiderDays.Of(instant, tz), due);
            day = due!.Value;
        }
    }

    private static IEnumerable<LocalDate> Recurring(CalDateTime start, int every)
    {
        var repeats = new CalendarEvent { Start = start };
        repeats.RecurrenceRule = new RecurrenceRule($"FREQ=DAILY;INTERVAL={every}");
        return repeats.GetOccurrences().Select(o => LocalDate.FromDateTime(o.Period.StartTime.Value));
    }
}
