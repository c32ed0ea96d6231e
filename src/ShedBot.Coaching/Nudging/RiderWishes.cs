using NodaTime;

namespace ShedBot.Coaching.Nudging;

/// <summary>What a member can choose about reminders. It is decided anew after each change.</summary>
public static class RiderWishes
{
    /// <summary>Each day has so much time in which a message may come.</summary>
    private static readonly Period LeastAwake = Period.FromHours(1);

    /// <returns>The member after, its version one above the one it was read with; or why it stays as it is.</returns>
    public static Result<Rider> Take(Rider rider, RiderRequest request, DateTimeOffset now)
    {
        var heard = Nudger.Heard(rider, now);
        Result<Rider> wished = request switch
        {
            RemindMe { At: { } time } => Agree(rider, now).Prefer(time, now),
            RemindMe => Agree(rider, now),
            RemindMeNoMore => Decline(rider, now),
            KeepQuiet quiet => heard.BeQuiet(quiet.Quiet, now),
            LiveIn lives => heard.MoveTo(lives.Zone, now),
            ThinkIn thinks => heard with { Units = thinks.Units },
            HearAgain { Task: { } task } => heard.HearAgainOf(task, now),
            HearAgain => heard with { Stopped = [] },
            MentionMe mention => heard.MentionIn(mention.Place),
            _ => throw new ArgumentOutOfRangeException(nameof(request), request, "A new kind of wish needs a way to be taken."),
        };
        return wished.Value is { } after ? after with { Version = rider.Version + 1 } : wished;
    }

    /// <summary>Yes, remind me. What kept messages away before counts no more.</summary>
    public static Rider Agree(Rider rider, DateTimeOffset now) =>
        Nudger.Heard(rider, now) with { Consent = Consent.Given, Refused = false, Note = false, NextLook = now };

    /// <summary>No reminders, or no more of them.</summary>
    public static Rider Decline(Rider rider, DateTimeOffset now) => Nudger.Heard(rider, now) with { Consent = Consent.Withheld, NextLook = null, Later = [] };

    /// <param name="time">Where it is quiet at that time, the end of the quiet hours counts.</param>
    public static Rider Prefer(this Rider rider, LocalTime time, DateTimeOffset now) => rider with { Preferred = time, NextLook = LookFrom(rider, now), Version = rider.Version + 1 };

    /// <returns>The member after, or the refusal <c>always-quiet</c>.</returns>
    public static Result<Rider> BeQuiet(this Rider rider, QuietHours quiet, DateTimeOffset now) => quiet.From != quiet.Until && Awake(quiet) < LeastAwake.ToDuration()
        ? new Refusal("always-quiet", "That leaves less than an hour a day. To hear nothing at all, stop all reminders.")
        : rider with { Quiet = quiet, NextLook = LookFrom(rider, now), Version = rider.Version + 1 };

    /// <param name="zone">An IANA zone, or null: the club's.</param>
    /// <returns>The member after, or the refusal <c>zone</c>.</returns>
    public static Result<Rider> MoveTo(this Rider rider, string? zone, DateTimeOffset now) => zone is not null && RiderClock.ZoneOf(zone) is null
        ? new Refusal("zone", "I don't know that time zone. Name it as in Europe/Lisbon.")
        : rider with { Zone = zone, NextLook = LookFrom(rider, now), Version = rider.Version + 1 };

    /// <param name="place">As the platform names it, or null: nowhere.</param>
    public static Rider MentionIn(this Rider rider, string? place) => rider with { Place = place, Version = rider.Version + 1 };

    public static Rider HearAgainOf(this Rider rider, string task, DateTimeOffset now) => rider with { Stopped = rider.Stopped.Remove(task), NextLook = LookFrom(rider, now), Version = rider.Version + 1 };

    /// <summary>Whoever is not reminded need not be looked at.</summary>
    private static DateTimeOffset? LookFrom(Rider rider, DateTimeOffset now) => rider is { Consent: Consent.Given, Refused: false, Silent: false } ? now : rider.NextLook;

    private static Duration Awake(QuietHours quiet)
    {
        var awake = quiet.From.TickOfDay - quiet.Until.TickOfDay;
        return Duration.FromTicks(awake >= 0 ? awake : awake + NodaConstants.TicksPerDay);
    }
}
