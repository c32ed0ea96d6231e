using System.Globalization;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Wording;

/// <summary>The words in which rules state intervals: 14 riding days, 10 hours, 50 km, 1 year, before the next ride.</summary>
public static class IntervalWords
{
    /// <summary>In place of an amount: due as soon as the event has happened.</summary>
    public const string BeforeTheNextRide = "before the next ride";

    private static readonly (string One, string Many, Measure Measure, double Times)[] Units =
    [
        ("riding day", "riding days", Measure.RidingDays, 1),
        ("hour", "hours", Measure.Hours, 1),
        ("km", "km", Measure.Kilometres, 1),
        ("day", "days", Measure.Days, 1),
        ("week", "weeks", Measure.Days, 7),
        ("month", "months", Measure.Days, 30),
        ("year", "years", Measure.Days, 365),
    ];

    /// <summary>The form of an interval, for editors.</summary>
    public static string Pattern { get; } =
        $@"^({BeforeTheNextRide}|[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+) ({string.Join('|', Units.SelectMany(u => new[] { u.One, u.Many }).Distinct())}))$";

    /// <summary>What to write instead of a text that is no interval.</summary>
    public static string Instead(string text)
    {
        var unit = text[(text.IndexOf(' ', StringComparison.Ordinal) + 1)..];
        var near = Nearest.Ask(unit, Units.Select(u => u.Many));
        return $"{near}{(near.Length > 0 ? " " : "")}Write an amount and one of: {string.Join(", ", Units.Select(u => u.Many))}. For example: 14 riding days.";
    }

    /// <summary>Weeks, months and years are days of the calendar: 7, 30 and 365. The amount may come out as 0 or below, as written.</summary>
    /// <returns>False when it is no amount and unit.</returns>
    public static bool TryRead(string text, out Interval interval)
    {
        interval = Interval.BeforeTheNextRide;
        if (text == BeforeTheNextRide) return true;
        var gap = text.IndexOf(' ', StringComparison.Ordinal);
        if (gap < 0 || !TryAmount(text[..gap], out var amount)) return false;
        foreach (var (one, many, measure, times) in Units)
        {
            if (text[(gap + 1)..] is var unit && unit != one && unit != many) continue;
            interval = new Interval(amount * times, measure);
            return true;
        }

        return false;
    }

    /// <summary>The interval in words that read as it again: 365 days, whatever it was written as.</summary>
    public static string Text(Interval interval)
    {
        if (interval == Interval.BeforeTheNextRide) return BeforeTheNextRide;
        var (one, many, _, _) = Units.First(u => u.Measure == interval.Measure && u.Times == 1);
        return string.Create(CultureInfo.InvariantCulture, $"{interval.Amount:0.##} {(interval.Amount == 1 ? one : many)}");
    }

    private static bool TryAmount(string text, out double amount) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out amount) && double.IsFinite(amount);
}
