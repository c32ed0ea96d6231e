using NodaTime;
using NodaTime.TimeZones;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Nudging;

/// <summary>One moment as the member's own clock shows it.</summary>
/// <remarks>
/// Where clocks are put forward, a time that does not exist is taken for the first moment after the gap. Where they are put back, a time that comes
/// twice is taken for the first of the two; whether it is quiet goes by what the clock shows, so a quiet hour that comes twice is quiet twice.
/// </remarks>
internal sealed class RiderClock
{
    private static readonly ZoneLocalMappingResolver First = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    private readonly QuietHours quiet;
    private readonly LocalTime preferred;

    public RiderClock(Rider rider, string clubZone, DateTimeOffset now)
    {
        (quiet, preferred, Now) = (rider.Quiet, rider.Preferred, now);
        Zone = ZoneOf(rider.Zone) ?? ZoneOf(clubZone) ?? DateTimeZone.Utc;
        var local = Instant.FromDateTimeOffset(now).InZone(Zone);
        (Today, IsQuiet, HadEvening) = (local.Date, quiet.Cover(local.TimeOfDay), rider.LastEvening >= local.Date);
    }

    public DateTimeOffset Now { get; }

    public DateTimeZone Zone { get; }

    public LocalDate Today { get; }

    public bool IsQuiet { get; }

    /// <summary>True when a reminder asked for with "tonight" went out today.</summary>
    public bool HadEvening { get; }

    /// <returns>The zone, or null when the IANA data hold none of that name.</returns>
    public static DateTimeZone? ZoneOf(string? name) => name is null ? null : DateTimeZoneProviders.Tzdb.GetZoneOrNull(name);

    public LocalDate DayOf(DateTimeOffset at) => RiderDays.Of(at, Zone);

    /// <summary>The preferred moment of a day; where that is quiet, the end of the quiet hours.</summary>
    public DateTimeOffset Slot(LocalDate day) => On(day, preferred);

    /// <summary>A moment of a day, outside quiet hours.</summary>
    public DateTimeOffset On(LocalDate day, LocalTime time) => Awake(Zone.ResolveLocal(day + quiet.Outside(time), First));

    /// <summary>The first moment from now on that is not quiet.</summary>
    public DateTimeOffset Awake() => Awake(Instant.FromDateTimeOffset(Now).InZone(Zone));

    /// <returns>The first of the times that is still to come today, with half an hour to spare and outside quiet hours; or null.</returns>
    public DateTimeOffset? StillToday(params ReadOnlySpan<LocalTime> times)
    {
        foreach (var time in times)
        {
            if (!quiet.Cover(time) && On(Today, time) is var at && at >= Now.AddMinutes(30) && DayOf(at) == Today) return at;
        }

        return null;
    }

    /// <summary>Twice at most: an end of quiet hours that falls into a gap, or comes again, is looked for once more.</summary>
    private DateTimeOffset Awake(ZonedDateTime at)
    {
        for (var tries = 0; tries < 3 && quiet.Cover(at.TimeOfDay); tries++)
        {
            var end = Zone.ResolveLocal(at.Date + quiet.Until, First);
            if (end.ToInstant() <= at.ToInstant())
            {
                // The end has passed: it is the one of the next morning, or, where the hour comes twice, its second time.
                var second = Zone.MapLocal(at.Date + quiet.Until);
                end = second.Count == 2 && second.Last().ToInstant() > at.ToInstant() ? second.Last() : Zone.ResolveLocal(at.Date.PlusDays(1) + quiet.Until, First);
            }

            at = end;
        }

        return at.ToDateTimeOffset();
    }
}
