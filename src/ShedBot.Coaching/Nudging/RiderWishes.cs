using NodaTime;

namespace ShedBot.Coaching.Nudging;

/// <summary>What a member can choose about reminders. It is decided anew after each change.</summary>
public static class RiderWishes
{
    /// <summary>Each day has so much time in which a message may come.</summary>
    private static readonly Period LeastAwake = Period.FromHours(1);

    /// <param name="time">Where it is quiet at that time, the end of the quiet hours counts.</param>
    public static Rider Prefer(this Rider rider, LocalTime time, DateTimeOffset now) => rider with { Preferred = time, NextLook = now, Version = rider.Version + 1 };

    /// <returns>The member after, or the refusal <c>always-quiet</c>.</returns>
    public static Result<Rider> BeQuiet(this Rider rider, QuietHours quiet, DateTimeOffset now) => quiet.From != quiet.Until && Awake(quiet) < LeastAwake.ToDuration()
        ? new Refusal("always-quiet", "That leaves less than an hour a day. To hear nothing at all, stop all reminders.")
        : rider with { Quiet = quiet, NextLook = now, Version = rider.Version + 1 };

    /// <param name="zone">An IANA zone, or null: the club's.</param>
    /// <returns>The member after, or the refusal <c>zone</c>.</returns>
    public static Result<Rider> MoveTo(this Rider rider, string? zone, DateTimeOffset now) => zone is not null && RiderClock.ZoneOf(zone) is null
        ? new Refusal("zone", "I don't know that time zone. Name it as in Europe/Lisbon.")
        : rider with { Zone = zone, NextLook = now, Version = rider.Version + 1 };

    /// <param name="place">As the platform names it, or null: nowhere.</param>
    public static Rider MentionIn(this Rider rider, string? place) => rider with { Place = place, Version = rider.Version + 1 };

    public static Rider HearAgainOf(this Rider rider, string task, DateTimeOffset now) => rider with { Stopped = rider.Stopped.Remove(task), NextLook = now, Version = rider.Version + 1 };

    private static Duration Awake(QuietHours quiet)
    {
        var awake = quiet.From.TickOfDay - quiet.Until.TickOfDay;
        return Duration.FromTicks(awake >= 0 ? awake : awake + NodaConstants.TicksPerDay);
    }
}
