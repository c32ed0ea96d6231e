using System.Globalization;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Service;

/// <summary>Amounts and paces in words.</summary>
internal static class PlanWords
{
    public static string Of(UsedAmount amount)
    {
        if (amount.Allowed == 0) return "before the next ride";
        var used = (amount.Estimated ? "about " : "") + Number(amount.Used);
        if (amount.Share > 1) return $"{used} {Unit(amount.Measure, amount.Used)}, due at {Number(amount.Allowed)}";
        // Riding wears one bike faster than another; a year is a year.
        var of = amount.Estimated || amount.Measure == Measure.Days ? "of" : "of about";
        return $"{used} {of} {Number(amount.Allowed)} {Unit(amount.Measure, amount.Allowed)}";
    }

    public static string Unit(Measure measure, double amount) => (measure, Number(amount) == "1") switch
    {
        (Measure.RidingDays, true) => "riding day",
        (Measure.RidingDays, false) => "riding days",
        (Measure.Hours, true) => "hour of riding",
        (Measure.Hours, false) => "hours of riding",
        (Measure.Days, true) => "day",
        (Measure.Days, false) => "days",
        _ => "km",
    };

    public static string PaceOf(Pace pace, StatedPace? stated) => pace.Basis switch
    {
        PaceBasis.Logged => $"By your log you ride about {Number(pace.DaysPerWeek)} days a week.",
        PaceBasis.Stated => $"You said about {Number(stated!.DaysPerWeek)} days a week; I go mostly by that.",
        _ => "Your log is still short, so I go mostly by what is usual.",
    };

    /// <summary>Whole from 10 on, else one digit.</summary>
    public static string Number(double amount) => amount.ToString(amount >= 9.95 ? "0" : "0.#", CultureInfo.InvariantCulture);
}
