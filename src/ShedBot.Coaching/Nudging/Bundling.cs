using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Nudging;

/// <summary>How reminders are gathered, so that one evening in the shed does several jobs. Common practice, no source; chosen by the year in docs/nudges.md.</summary>
/// <param name="GapDays">What does not press is told so many days after the last digest at the soonest; 1 or more.</param>
/// <param name="AheadDays">A digest brings along what is expected within so many days; 0 or more, or -1: nothing.</param>
/// <param name="MostAWeek">What does not press makes no more digests than this in seven days; 1 to 7.</param>
internal sealed record Bundling(int GapDays, int AheadDays, int MostAWeek)
{
    /// <summary>A digest day further ahead than this was set by a clock that was wrong.</summary>
    private const int WrongClockDays = 2;

    public static Bundling Usual { get; } = new(4, 4, 3);

    /// <summary>
    /// The first day on which something that does not press may be told. Goes by the days of digests: whether to go on, asked in between, is none.
    /// </summary>
    public LocalDate From(Rider rider, LocalDate today)
    {
        var days = rider.Told.Select(t => t.Day).Where(d => d <= today.PlusDays(WrongClockDays)).Distinct().OrderDescending().Take(MostAWeek).ToImmutableArray();
        if (days.IsEmpty) return today;
        var gap = days[0].PlusDays(GapDays);
        return days.Length < MostAWeek ? gap : LocalDate.Max(gap, days[^1].PlusDays(7));
    }
}
