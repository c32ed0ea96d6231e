using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Logbook;

/// <summary>What was done on a bike, what is due and what is coming, laid out along the days: all that a picture of it shows, and the same in words.</summary>
/// <param name="Title">One line, as in "The service of your bike".</param>
/// <param name="Days">As in "2 Feb 2026 to 30 Aug 2026".</param>
/// <param name="From">The first day that is shown; 0 of every place.</param>
/// <param name="To">The last day that is shown; 1 of every place.</param>
/// <param name="Today">The place of today; above 0 and below 1.</param>
/// <param name="Ticks">Ascending.</param>
/// <param name="Rests">Times of not riding, ascending.</param>
/// <param name="Rows">A task each, the most pressing first; at most <see cref="Timelines.MostRows"/>.</param>
/// <param name="Caption">What the rows do not show, in one to three sentences; empty when that is nothing.</param>
/// <param name="Words">What the picture shows: a line for today, for each row and for each rest.</param>
public sealed record Timeline(
    string Title,
    string Days,
    LocalDate From,
    LocalDate To,
    double Today,
    ImmutableArray<TimelineTick> Ticks,
    ImmutableArray<TimelineStretch> Rests,
    ImmutableArray<TimelineRow> Rows,
    string Caption,
    ImmutableArray<string> Words);

/// <param name="Place">In [0, 1], from the first day that is shown to the last.</param>
/// <param name="Label">As in "4 May".</param>
public sealed record TimelineTick(double Place, string Label);

/// <param name="From">In [0, 1].</param>
/// <param name="To">In [0, 1], not before <paramref name="From"/>.</param>
/// <param name="GoesOn">True when it does not end within the days that are shown.</param>
public sealed record TimelineStretch(double From, double To, bool GoesOn);

/// <summary>One service task.</summary>
/// <param name="Called">As the rules call it, with a capital.</param>
/// <param name="When">As in "overdue since 3 Apr" or "14 May (9 to 20 May)".</param>
/// <param name="Marks">In the order in which they are to be drawn.</param>
/// <param name="Band">From the day by which it falls due for 1 of 10 such riders to the day by which it does for 9 of 10; null when it is due, or is no estimate.</param>
public sealed record TimelineRow(string Called, string When, ImmutableArray<TimelineMark> Marks, TimelineStretch? Band);

/// <param name="Place">In [0, 1].</param>
public sealed record TimelineMark(TimelineSign Sign, double Place);

/// <summary>What a mark says.</summary>
public enum TimelineSign
{
    /// <summary>It was done on this day.</summary>
    Done,

    /// <summary>It was last done before the first day that is shown; stands at the edge.</summary>
    DoneEarlier,

    /// <summary>It fell due on this day and was not done since; at the edge when that was before the first day that is shown.</summary>
    Due,

    /// <summary>The same, and by now half as far again as it may go.</summary>
    Overdue,

    /// <summary>It is expected to fall due on this day.</summary>
    Expected,

    /// <summary>It is expected after the last day that is shown; stands at the edge.</summary>
    ExpectedLater,
}
