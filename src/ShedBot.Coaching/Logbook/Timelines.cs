using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>Lays the service plan of a bike out along the days. Pure: the same bike, rules and day give the same picture.</summary>
public static class Timelines
{
    /// <summary>More than this are too small on a telephone.</summary>
    public const int MostRows = 12;

    private const int MostName = 40;

    /// <param name="today">In the rider's zone.</param>
    /// <param name="zone">The rider's zone, for the days of repairs through cases.</param>
    public static Timeline Of(BikeProfile bike, KnowledgeBase knowledge, LocalDate today, DateTimeZone zone)
    {
        var plan = ServicePlan.Of(bike, knowledge, today, zone).Where(i => !i.Rule.BeforeEachRide).Select(i => new TimelineItem(i, DoneOn(bike, i, zone))).ToList();
        // What was never done and cannot be dated has nothing to show.
        var shown = plan.Where(i => i.Plan.State != DueState.NotYetKnown || !i.Done.IsEmpty).OrderBy(i => i.Pressing).ToList();
        ImmutableArray<TimelineItem> rows = [.. shown.Take(MostRows)];
        var span = TimelineSpan.Of(rows, today);
        ImmutableArray<RidingBreak> rests = [.. bike.Riding.Breaks.Where(b => b.From <= span.To && !(b.Until <= span.From))];
        return new Timeline(
            bike.Name.Length > 0 ? $"The service of {CleanText.OneLine(bike.Name, MostName)}" : "The service of your bike",
            $"{Dates.Say(span.From)} to {Dates.Say(span.To)}",
            span.From,
            span.To,
            span.Place(today),
            span.Ticks(),
            [.. rests.Select(b => span.Stretch(b.From, b.Until))],
            [.. rows.Select(i => new TimelineRow(Say.Capital(i.Plan.Rule.Called), TimelineWords.When(i, today), i.Marks(span, today), i.Band(span)))],
            TimelineWords.Caption(rows.Length, shown.Count - rows.Length, plan.Count - shown.Count),
            [$"Today is {Dates.Say(today)}", .. rows.Select(i => TimelineWords.Row(i, span, today)), .. rests.Select(TimelineWords.Rest)]);
    }

    private static ImmutableArray<LocalDate> DoneOn(BikeProfile bike, PlanItem item, DateTimeZone zone) =>
    [
        .. bike.Done.Where(d => d.Task == item.Rule.Id).Select(d => d.Day)
            .Concat(bike.Work.Where(w => item.Rule.DoneBy.Contains(w.Repair)).Select(w => RiderDays.Of(w.At, zone)))
            .Distinct().Order(),
    ];
}
