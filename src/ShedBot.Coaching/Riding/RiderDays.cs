using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>Instants as days of the rider's own zone.</summary>
public static class RiderDays
{
    /// <param name="zone">An IANA zone, as in <see cref="DateTimeZoneProviders.Tzdb"/>.</param>
    public static LocalDate Of(DateTimeOffset at, DateTimeZone zone) => Instant.FromDateTimeOffset(at).InZone(zone).Date;

    /// <summary>When a day begins in a zone: at midnight, or at the first moment after it where the clocks skip midnight.</summary>
    public static DateTimeOffset Begins(LocalDate day, DateTimeZone zone) => zone.AtStartOfDay(day).ToDateTimeOffset();
}
