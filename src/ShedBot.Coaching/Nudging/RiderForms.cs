using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Nudging;

/// <summary>Reads what members write into the fields of their settings.</summary>
public static class RiderForms
{
    private const int MostNear = 5;

    /// <summary>A number alone up to here may be the morning or the evening.</summary>
    private const int LastUnclearHour = 11;

    private static readonly ImmutableArray<string> TimeForms = ["H:mm", "HH:mm", "H.mm", "h:mm tt", "h:mmtt", "h.mm tt", "h.mmtt", "h tt", "htt", "%H"];

    /// <summary>A time of day: 18:00, 6 pm, 7:30 am.</summary>
    /// <returns>The time, or the refusal <c>time</c>.</returns>
    public static (LocalTime Time, Refusal? Refused) Time(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour is > 0 and <= LastUnclearHour
            ? (default, new Refusal("time", $"{hour} in the morning or in the evening? Write {hour} am or {hour} pm, or {hour + 12}:00."))
            : Hour(text);

    private static (LocalTime Time, Refusal? Refused) Hour(string text)
    {
        var plain = text.Trim().Replace("o'clock", "", StringComparison.OrdinalIgnoreCase).Replace(".m.", "m", StringComparison.OrdinalIgnoreCase).Trim();
        return plain.ToLowerInvariant() switch
        {
            "noon" or "midday" => (LocalTime.Noon, null),
            "midnight" or "24:00" => (LocalTime.Midnight, null),
            _ => TimeOnly.TryParseExact(plain, [.. TimeForms], CultureInfo.InvariantCulture, DateTimeStyles.None, out var read)
                ? (LocalTime.FromTicksSinceMidnight(read.Ticks), null)
                : (default, new Refusal("time", $"I cannot read \"{CleanText.OneLine(text, 40)}\" as a time of day. Write it like 18:00 or 6 pm.")),
        };
    }

    /// <summary>Remind me, around a time of day where one is told.</summary>
    /// <returns>The request, or the refusal <c>time</c>.</returns>
    public static Result<RiderRequest> On(string? time)
    {
        if (string.IsNullOrWhiteSpace(time)) return new RemindMe(null);
        var read = Time(time);
        if (read.Refused is { } refused) return refused;
        return new RemindMe(read.Time);
    }

    /// <summary>Quiet hours: "21:00 to 8:00", "10 pm - 7 am"; "none".</summary>
    /// <returns>The request, or the refusal <c>time</c>.</returns>
    public static Result<RiderRequest> Quiet(string text)
    {
        if (text.Trim().ToLowerInvariant() is "none" or "never" or "no" or "off") return new KeepQuiet(new QuietHours(LocalTime.Midnight, LocalTime.Midnight));
        var ends = text.Split([" to ", " till ", " until ", "-", "–"], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (ends.Length != 2) return new Refusal("time", "Write quiet hours like 21:00 to 8:00, or none.");
        // The end of a night is in the morning: only its beginning can be unclear.
        var (from, until) = (Time(ends[0]), Hour(ends[1]));
        if ((from.Refused ?? until.Refused) is { } refused) return refused;
        return from.Time == until.Time
            ? new Refusal("time", "From and until are the same. Write quiet hours like 21:00 to 8:00, or none.")
            : new KeepQuiet(new QuietHours(from.Time, until.Time));
    }

    /// <summary>A time zone by its name in the IANA data, by its city, or by a country that has but one; "club" for the club's.</summary>
    /// <returns>The request, or the refusal <c>zone</c>.</returns>
    public static Result<RiderRequest> Zone(string text)
    {
        if (text.Trim().ToLowerInvariant() is "club" or "the club" or "the club's" or "clubs" or "club's") return new LiveIn(null);
        var found = ZoneNames.Find(text);
        if (found is [var one]) return new LiveIn(one);
        var near = found.IsEmpty ? "" : $" Do you mean {string.Join(", ", found.Take(MostNear))}{(found.Length > MostNear ? " or another" : "")}?";
        return new Refusal("zone", $"I know no one time zone \"{CleanText.OneLine(text, 40)}\".{near} Name it by its largest city, as in Europe/Lisbon.");
    }

    /// <returns>The zones whose city begins so, by name; all of a city's own names only once it is written out.</returns>
    public static ImmutableArray<string> Zones(string typed) => ZoneNames.Beginning(typed);

    /// <returns>The request, or the refusal <c>units</c>.</returns>
    public static Result<RiderRequest> UnitsOf(string text) => text.Trim().ToLowerInvariant() switch
    {
        "km" or "kilometres" or "kilometers" or "metric" => new ThinkIn(Units.Metric),
        "miles" or "mi" or "mile" or "imperial" => new ThinkIn(Units.Imperial),
        "club" or "the club's" => new ThinkIn(null),
        _ => new Refusal("units", $"I cannot read \"{CleanText.OneLine(text, 40)}\" as units. Write km or miles."),
    };
}
