using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Service;

namespace ShedBot.Coaching.Logbook;

/// <summary>A task of the plan with the days on which it was done.</summary>
/// <param name="Done">By itself or by a repair that counts as it; ascending.</param>
internal sealed record TimelineItem(PlanItem Plan, ImmutableArray<LocalDate> Done)
{
    /// <summary>Also while the bike rests: it is to be done before it is ridden again.</summary>
    public bool IsDue => Plan.State is DueState.Due or DueState.Overdue || (Plan.State == DueState.Waiting && Plan.Amount.Share >= 1);

    /// <summary>Orders by how much it presses: overdue, due, due while the bike rests, then by the expected day, then what has none.</summary>
    public (int, LocalDate, string) Pressing => (
        Plan.State switch
        {
            DueState.Overdue => 0,
            DueState.Due => 1,
            _ when IsDue => 2,
            DueState.NotYetKnown => 4,
            _ => 3,
        },
        Plan.Expected ?? LocalDate.MaxIsoValue,
        Plan.Rule.Id);

    public ImmutableArray<TimelineMark> Marks(TimelineSpan span, LocalDate today)
    {
        var marks = ImmutableArray.CreateBuilder<TimelineMark>();
        if (Done is [.., var last] && last < span.From) marks.Add(new TimelineMark(TimelineSign.DoneEarlier, 0));
        marks.AddRange(Done.Where(span.Shows).Select(d => new TimelineMark(TimelineSign.Done, span.Place(d))));
        if (IsDue) marks.Add(new TimelineMark(Plan.State == DueState.Overdue ? TimelineSign.Overdue : TimelineSign.Due, span.Place(Plan.Expected ?? today)));
        else if (Plan.State != DueState.NotYetKnown && Plan.Expected is { } day)
            marks.Add(span.Shows(day) ? new TimelineMark(TimelineSign.Expected, span.Place(day)) : new TimelineMark(TimelineSign.ExpectedLater, 1));
        return marks.ToImmutable();
    }

    /// <summary>A day of the calendar is no estimate, so it has no band.</summary>
    public TimelineStretch? Band(TimelineSpan span) =>
        !IsDue && Plan is { State: not DueState.NotYetKnown, Expected: not null, Earliest: { } from } && from <= span.To && Plan.Latest != from
            ? span.Stretch(from, Plan.Latest)
            : null;
}
