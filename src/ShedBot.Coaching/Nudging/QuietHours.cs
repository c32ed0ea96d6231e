using NodaTime;

namespace ShedBot.Coaching.Nudging;

/// <summary>The hours of the member's own day in which nothing is sent.</summary>
/// <param name="From">The first quiet moment.</param>
/// <param name="Until">The first moment after; earlier than <paramref name="From"/> when midnight lies between; the same: no hour is quiet.</param>
public sealed record QuietHours(LocalTime From, LocalTime Until)
{
    /// <summary>Nine in the evening to eight in the morning. Common practice, no source.</summary>
    public static QuietHours Usual { get; } = new(new LocalTime(21, 0), new LocalTime(8, 0));

    public bool Cover(LocalTime time) => From <= Until ? time >= From && time < Until : time >= From || time < Until;

    /// <returns>The time, or where it is quiet the end of the quiet hours.</returns>
    public LocalTime Outside(LocalTime time) => Cover(time) ? Until : time;
}
