using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Logbook;

/// <summary>A timeline in words, for those who do not see the picture: nothing is in the one that is not in the other.</summary>
internal static class TimelineWords
{
    /// <summary>More days than this on which a task was done are counted.</summary>
    private const int MostDays = 3;

    private const int ClearDays = 300;

    private static readonly LocalDatePattern DayAndMonth = LocalDatePattern.CreateWithInvariantCulture("d MMM");

    /// <returns>As in "overdue since 3 Apr", "due today", "14 May (9 to 20 May)".</returns>
    public static string When(TimelineItem item, LocalDate today) => item.Plan switch
    {
        { State: DueState.NotYetKnown } => "not known yet",
        { State: DueState.Due, Amount.Allowed: 0 } => "before the next ride",
        { State: DueState.Overdue, Expected: { } since } => $"overdue since {Short(since, today)}",
        { Expected: { } since, State: var state } when item.IsDue =>
            (since == today ? "due today" : $"due since {Short(since, today)}") + (state == DueState.Waiting ? ", resting" : ""),
        { Expected: { } day } plan => Short(day, today) + Range(plan, today),
        { State: DueState.Waiting } => "no day while it rests",
        _ => "not for long",
    };

    /// <returns>As in "The spokes: 14 May (9 to 20 May); done 1 Apr and 15 Apr".</returns>
    public static string Row(TimelineItem item, TimelineSpan span, LocalDate today)
    {
        ImmutableArray<LocalDate> shown = [.. item.Done.Where(span.Shows)];
        var done = (item.Done, shown) switch
        {
            ([], _) => "",
            ([.., var last], []) => $"; last done {Short(last, today)}",
            (_, { Length: <= MostDays }) => $"; done {Say.Join([.. shown.Select(d => Short(d, today))])}",
            _ => $"; done {shown.Length} times from {Short(shown[0], today)} to {Short(shown[^1], today)}",
        };
        return $"{Say.Capital(item.Plan.Rule.Called)}: {When(item, today)}{done}";
    }

    public static string Rest(RidingBreak rest) =>
        rest.Until is { } until ? $"Not riding from {Dates.Say(rest.From)} till {Dates.Say(until)}" : $"Not riding since {Dates.Say(rest.From)}";

    /// <param name="later">Tasks that could be shown, beyond those that are.</param>
    /// <param name="unknown">Tasks of which nobody told when they were last done.</param>
    public static string Caption(int rows, int later, int unknown)
    {
        if (rows == 0) return $"Nothing can be dated yet. Tell me when the kit was fitted, how you ride, or what you have done; then {unknown} tasks get their days.";
        var says = ImmutableArray.CreateBuilder<string>();
        if (later > 0) says.Add(later == 1 ? "1 more task is less pressing." : $"{later} more tasks are less pressing.");
        if (unknown > 0) says.Add($"{unknown} {(unknown == 1 ? "has" : "have")} no day yet, since nobody told me when {(unknown == 1 ? "it was" : "they were")} last done.");
        return string.Join(' ', says);
    }

    private static string Range(PlanItem item, LocalDate today) => item is not { Earliest: { } from } || item.Latest == from ? ""
        : item.Latest is not { } to ? $" ({Short(from, today)} or later)"
        : from.Year == to.Year && from.Month == to.Month ? $" ({from.Day} to {Short(to, today)})"
        : $" ({Short(from, today)} to {Short(to, today)})";

    /// <summary>The year only where it is not clear.</summary>
    private static string Short(LocalDate day, LocalDate today) =>
        Math.Abs(Period.DaysBetween(today, day)) < ClearDays ? DayAndMonth.Format(day) : Dates.Say(day);
}
