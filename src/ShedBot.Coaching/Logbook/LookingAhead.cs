using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>A moment to move a practice clock to.</summary>
/// <param name="Says">As in "It is 15 May 2026 now."</param>
public sealed record Moment(DateTimeOffset At, string Says);

/// <summary>Reads how far a practice clock is to be moved: to the next due day, to a day, or on by some days. Never back.</summary>
public static class LookingAhead
{
    private const int MostDays = 3653;

    /// <param name="words">Empty: to the next day on which something falls due; else "to 15 may", "3 days" or "2 weeks".</param>
    /// <returns>The same time of the day then, or why the clock stays.</returns>
    public static Result<Moment> To(string words, BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var today = speaker.DayOf(at);
        if (string.IsNullOrWhiteSpace(words))
        {
            var next = ServicePlan.Of(bike, knowledge, today, speaker.Zone)
                .Where(i => i.State is DueState.Soon or DueState.Done or DueState.Waiting && i.Expected > today).MinBy(i => i.Expected);
            return next is null
                ? new Refusal("no-next", "Nothing is coming due by what I know. Log a ride or say your pace, or skip 7 days.")
                : On(next.Expected!.Value, speaker, at, $" Expected now: {next.Rule.Called}.");
        }

        var text = words.Trim();
        var to = text.StartsWith("to ", StringComparison.OrdinalIgnoreCase);
        var read = DayWords.Whole(to ? text[3..] : "in " + text, today, coming: true);
        if (read.Refused is { } refused) return to ? refused : new Refusal("day", "Write skip, skip 7 days, or skip to 15 may.");
        return read.Day <= today || Period.DaysBetween(today, read.Day) > MostDays
            ? new Refusal("day", $"The clock goes forward only, and at most {MostDays / 365} years at once.")
            : On(read.Day, speaker, at, "");
    }

    /// <returns>The moment as the member's clock shows it, as in "Friday, 15 May 2026, 18:00".</returns>
    public static string Clock(DateTimeOffset at, Speaker speaker)
    {
        var local = Instant.FromDateTimeOffset(at).InZone(speaker.Zone);
        return $"{local.DayOfWeek}, {Riding.Dates.Say(local.Date)}, {local.TimeOfDay.ToString("HH:mm", CultureInfo.InvariantCulture)}";
    }

    private static Moment On(LocalDate day, Speaker speaker, DateTimeOffset at, string why)
    {
        var time = Instant.FromDateTimeOffset(at).InZone(speaker.Zone).TimeOfDay;
        return new((day + time).InZoneLeniently(speaker.Zone).ToDateTimeOffset(), $"It is {day.DayOfWeek}, {Riding.Dates.Say(day)} now.{why}");
    }
}
