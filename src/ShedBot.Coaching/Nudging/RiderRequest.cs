using NodaTime;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Nudging;

/// <summary>What a member wants of their reminders and settings.</summary>
public abstract record RiderRequest;

/// <summary>How they stand.</summary>
public sealed record ShowReminders : RiderRequest;

/// <param name="At">The time of day at which they like to be written to; null: as it is.</param>
public sealed record RemindMe(LocalTime? At) : RiderRequest;

public sealed record RemindMeNoMore : RiderRequest;

/// <param name="Quiet">The hours in which nothing is sent.</param>
public sealed record KeepQuiet(QuietHours Quiet) : RiderRequest;

/// <param name="Zone">An IANA zone, or null: the club's.</param>
public sealed record LiveIn(string? Zone) : RiderRequest;

/// <param name="Units">The units they think in, or null: the club's.</param>
public sealed record ThinkIn(Units? Units) : RiderRequest;

/// <param name="Task">The id of a service rule that was stopped, or null: all of them.</param>
public sealed record HearAgain(string? Task) : RiderRequest;

/// <param name="Place">Where they may be mentioned once when they cannot be written to, as the platform names it; null: nowhere.</param>
public sealed record MentionMe(string? Place) : RiderRequest;
