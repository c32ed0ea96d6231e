using System.Globalization;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Logbook;

/// <summary>Distances and times for the eye.</summary>
internal static class Amounts
{
    private const int MinutesInHour = 60;

    /// <returns>As in "12 km" or "7.5 miles".</returns>
    public static string Distance(double kilometres, Units units)
    {
        if (units == Units.Metric) return $"{Number(kilometres)} km";
        var miles = Number(kilometres / AmountWords.KilometresPerMile);
        return miles == "1" ? "1 mile" : $"{miles} miles";
    }

    /// <returns>As in "40 min" or "1 h 20 min".</returns>
    public static string Time(double hours)
    {
        var minutes = Math.Max(1, (int)Math.Round(hours * MinutesInHour));
        var (h, min) = (minutes / MinutesInHour, minutes % MinutesInHour);
        return h == 0 ? $"{min} min" : min == 0 ? $"{h} h" : $"{h} h {min} min";
    }

    public static string Number(double amount) => amount.ToString(amount >= 99.95 ? "0" : "0.#", CultureInfo.InvariantCulture);

    /// <returns>Distance and time as far as they are told; empty when neither is.</returns>
    public static string Both(double? kilometres, double? hours, Units units) => string.Join(
        ", ", new[] { kilometres is { } km ? Distance(km, units) : null, hours is { } h ? Time(h) : null }.OfType<string>());
}
