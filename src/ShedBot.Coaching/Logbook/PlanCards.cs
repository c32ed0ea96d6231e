using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>The plan, short enough for a telephone.</summary>
internal static class PlanCards
{
    /// <summary>So many tasks are shown unless all are asked for.</summary>
    private const int Soonest = 5;

    /// <summary>A band of so many days is as good as one day.</summary>
    private const int NarrowDays = 4;

    private const int ClearDays = 300;

    private static readonly LocalDatePattern DayAndMonth = LocalDatePattern.CreateWithInvariantCulture("d MMM");

    public static Card Of(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at, bool whole)
    {
        var today = speaker.DayOf(at);
        var plan = ServicePlan.Of(bike, knowledge, today, speaker.Zone);
        ImmutableArray<PlanItem> dated = [.. plan.Where(i => !i.Rule.BeforeEachRide && i.State != DueState.NotYetKnown)];
        ImmutableArray<PlanItem> unknown = [.. plan.Where(i => i.State == DueState.NotYetKnown)];
        var shown = whole ? dated : [.. dated.Take(Soonest)];
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        if (bike.Riding.BreakOn(today) is { } rest)
            blocks.Add(Say.Text(rest.Until is { } until ? $"You are not riding till {Dates.Say(until)}." : "You are not riding for now."));
        blocks.AddRange(Say.List("", shown.Select(i => whole ? ShortLine(i, today) : Line(i, today))));
        if (whole) blocks.AddRange(Say.List("Not known yet, since nobody told me when it was last done", unknown.Select(i => $"{i.Rule.Called} ({i.Rule.Id})")));
        if (Missing(bike, speaker, dated.Length, unknown) is { } missing) blocks.Add(Say.Text(missing));
        blocks.AddRange(plan.Where(i => i.Rule.BeforeEachRide).Select(i => Say.Text($"Before every ride: {i.Rule.Called}. {Way(speaker.Ways.How, i.Rule.Id)}")));
        var left = dated.Length - shown.Length + (whole ? 0 : unknown.Length);
        if (left > 0) blocks.Add(Say.Text($"{left} more: {speaker.Ways.Whole}"));
        if (!shown.IsEmpty) blocks.Add(Say.Text($"How it is done: {Way(speaker.Ways.How, shown[0].Rule.Id)}. When it is done: {Way(speaker.Ways.Done, shown[0].Rule.Id)}."));
        return new Card(Title(plan), blocks.ToImmutable(), []);
    }

    /// <returns>One task on one line: when, what, and how much is used up.</returns>
    public static string Line(PlanItem item, LocalDate today) => item.State switch
    {
        DueState.Overdue => $"OVERDUE: {item.Rule.Called}, {item.Amount.Words}",
        DueState.Due => $"Now: {item.Rule.Called}, {item.Amount.Words}",
        DueState.Waiting => $"When you ride again: {item.Rule.Called}, {item.Amount.Words}",
        DueState.NotYetKnown => $"Not known yet: {item.Rule.Called}",
        _ => $"{When(item, today)}: {item.Rule.Called}, {item.Amount.Words}",
    };

    /// <returns>The same where it is one of many: how much is used up is told of what is due only.</returns>
    private static string ShortLine(PlanItem item, LocalDate today) => item.State switch
    {
        DueState.Overdue or DueState.Due => Line(item, today),
        DueState.Waiting => $"When you ride again: {item.Rule.Called}",
        _ => $"{When(item, today)}: {item.Rule.Called}",
    };

    internal static string Way(string way, string task) => way.Replace("{0}", task, StringComparison.Ordinal);

    /// <summary>The band is told where it is wide enough to matter.</summary>
    private static string When(PlanItem item, LocalDate today) => item.Expected is not { } day ? "Not for long"
        : item is { Earliest: { } from, Latest: { } to } && Period.DaysBetween(from, to) > NarrowDays ? $"About {Short(day, today)} ({Short(from, today)} to {Short(to, today)})"
        : $"About {Short(day, today)}";

    /// <summary>The year only where it is not clear.</summary>
    private static string Short(LocalDate day, LocalDate today) => Period.DaysBetween(today, day) < ClearDays ? DayAndMonth.Format(day) : Dates.Say(day);

    private static string Title(ImmutableArray<PlanItem> plan) => plan.Count(i => i.State is DueState.Due or DueState.Overdue) switch
    {
        0 => "What your bike needs next",
        1 => "1 thing is due on your bike",
        var n => $"{n} things are due on your bike",
    };

    /// <summary>What would make the plan better; the most useful first, one at a time.</summary>
    private static string? Missing(BikeProfile bike, Speaker speaker, int dated, ImmutableArray<PlanItem> unknown) =>
        bike.Riding.FirstDay is null && bike.Riding.Pace is null ? $"I do not know yet how you ride. After a ride: {speaker.Ways.Ride}. Or once: {speaker.Ways.Pace}."
        : Fitting.DayOf(bike) is null ? $"I can say more once I know when the kit was fitted: {speaker.Ways.Fitted}."
        : unknown.Length > dated && unknown.Length > 0
            ? $"Nobody told me when {unknown.Length} of the tasks were last done, so they have no day yet. Do one, or say when it was done: {Way(speaker.Ways.Done, unknown[0].Rule.Id)}, and a day."
        : null;
}
