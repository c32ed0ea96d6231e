using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;

namespace ShedBot.Coaching.Logbook;

/// <summary>The days that a timeline shows: as many as its rows need, but not so many that near days run together.</summary>
/// <param name="From">Before today.</param>
/// <param name="To">After today.</param>
internal sealed record TimelineSpan(LocalDate From, LocalDate To)
{
    /// <summary>Days before today and after it; more than usual only where nothing else is to be shown, and never more than most.</summary>
    private const int Least = 21, Usual = 120, Most = 400;

    /// <summary>Free days at the ends, so that no mark lies on the edge.</summary>
    private const int Free = 3;

    /// <summary>Up to so many days a tick stands at every Monday, at every other one, at the first of every month; then at fewer firsts.</summary>
    private const int Weekly = 56, Fortnightly = 112, Monthly = 246;

    private static readonly LocalDatePattern Label = LocalDatePattern.CreateWithInvariantCulture("d MMM");

    private int Length => Period.DaysBetween(From, To);

    public static TimelineSpan Of(ImmutableArray<TimelineItem> rows, LocalDate today)
    {
        // Of what was done the newest is enough; what lies further back is shown as far as it fits.
        var back = rows.SelectMany(r => r.Done.TakeLast(1).Concat(r.IsDue && r.Plan.Expected is { } since ? [since] : []));
        var ahead = rows.Where(r => !r.IsDue).Select(r => r.Plan.Latest ?? r.Plan.Expected).OfType<LocalDate>();
        return new TimelineSpan(
            today.PlusDays(-Days(back.Select(d => Period.DaysBetween(d, today)))), today.PlusDays(Days(ahead.Select(d => Period.DaysBetween(today, d)))));
    }

    public bool Shows(LocalDate day) => day >= From && day <= To;

    /// <returns>In [0, 1]; a day that is not shown is at its edge.</returns>
    public double Place(LocalDate day) => Math.Clamp((double)Period.DaysBetween(From, day) / Length, 0, 1);

    /// <param name="to">Null: without an end.</param>
    public TimelineStretch Stretch(LocalDate from, LocalDate? to) => new(Place(from), to is { } end ? Place(end) : 1, !(to <= To));

    public ImmutableArray<TimelineTick> Ticks()
    {
        var days = Length > Fortnightly ? Firsts() : Mondays(Length > Weekly ? 2 : 1);
        return [.. days.Select(d => new TimelineTick(Place(d), Label.Format(d)))];
    }

    /// <summary>The furthest that is near enough to be shown; what is further is marked at the edge.</summary>
    private static int Days(IEnumerable<int> away)
    {
        var all = away.ToList();
        var most = Math.Clamp(all.DefaultIfEmpty(0).Min(), Usual, Most);
        return Math.Max(all.Where(d => d <= most).DefaultIfEmpty(0).Max(), Least) + Free;
    }

    private IEnumerable<LocalDate> Mondays(int weeks)
    {
        for (var day = From.PlusDays(-1).Next(IsoDayOfWeek.Monday); day <= To; day = day.PlusWeeks(weeks)) yield return day;
    }

    private IEnumerable<LocalDate> Firsts()
    {
        var months = ((Length - 1) / Monthly) + 1;
        for (var day = From.With(DateAdjusters.StartOfMonth); day <= To; day = day.PlusMonths(months))
        {
            if (day >= From) yield return day;
        }
    }
}
