using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Linting;

/// <summary>R052, R053, R072 to R078: each service task by itself, and their names against each other.</summary>
internal static class ServiceLook
{
    private const double LeastFactor = 1, MostFactor = 5;

    public static void Look(LintContext lint)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var task in lint.Rules.Service)
        {
            var (rule, whose) = (task.Rule, $"the service task '{task.Rule.Id}'");
            WorkLook.Cautions(lint, task, rule.Hazard, rule.Cautions.Length, whose);
            if (PhraseLook.Bare(rule.Called) is { Length: > 0 } name && !names.TryAdd(name, rule.Id))
                lint.Tell(ServiceRules.SameName, task, task.At("called"), $"{whose} is called '{rule.Called}', as '{names[name]}' is.", "Give one of them another name.");
            if (rule.BeforeEachRide && !(rule.Every.IsEmpty && rule.After.IsEmpty))
                lint.Tell(ServiceRules.EachRideAndMore, task, task.At("before each ride"), $"{whose} is for each ride and has an interval or event as well.", "Take 'before each ride' out, or 'every' and 'after'.");
            Intervals(lint, task, whose);
            Weather(lint, task, whose);
        }
    }

    private static void Intervals(LintContext lint, Written<ServiceRule> task, string whose)
    {
        Row(lint, task, task.Node["every"], task.Rule.Every, $"'every' of {whose}", afterEvent: false);
        for (var i = 0; i < task.Rule.After.Length; i++)
        {
            var at = (task.ItemAt("after", i) as MapNode)?["at"];
            var times = task.Rule.After[i].At;
            Row(lint, task, at, times, $"'after' of {whose}", afterEvent: true);
            for (var j = 0; j < times.Length; j++)
            {
                if (task.Rule.Every.Any(e => e.Measure == times[j].Measure && e.Amount > 0 && e.Amount <= times[j].Amount))
                    lint.Tell(ServiceRules.LateAfter, task, Nth(task, at, j, times.Length), $"{whose} is due again by 'every' before this long after the event.", "Write a shorter time, or take it out.");
            }
        }
    }

    private static void Row(LintContext lint, Written<ServiceRule> task, Node? list, ImmutableArray<Interval> intervals, string where, bool afterEvent)
    {
        for (var i = 0; i < intervals.Length; i++)
        {
            var (amount, measure) = intervals[i];
            var node = Nth(task, list, i, intervals.Length);
            if (amount < 0 || (amount == 0 && !afterEvent) || amount > Longest(measure))
                lint.Tell(ServiceRules.NeverComes, task, node, $"{where} has an interval that can never come.", FormattableString.Invariant($"Write an amount above 0 and up to {Longest(measure)}, such as 14 riding days, 10 hours, 50 km or 1 year."));
            if (intervals.Take(i).Any(e => e.Measure == measure && (e.Amount >= amount || !afterEvent)))
                lint.Tell(ServiceRules.IdleInterval, task, node, $"{where} has an earlier interval in the same measure.", afterEvent ? "Put the shortest first, each once." : "Keep the shorter one: whichever comes first counts.");
        }
    }

    private static void Weather(LintContext lint, Written<ServiceRule> task, string whose)
    {
        var rides = task.Rule.Every.Concat(task.Rule.After.SelectMany(a => a.At)).Any(i => i.Measure != Measure.Days && i.Amount > 0);
        foreach (var (weather, factor) in task.Rule.Sooner)
        {
            var at = task.At($"{weather} counts");
            if (factor is < LeastFactor or > MostFactor)
                lint.Tell(ServiceRules.BadFactor, task, at, FormattableString.Invariant($"'{weather} counts' of {whose} is {factor}."), "Write a number from 1 to 5: 2 means that a day in it counts as two.");
            else if (!rides)
                lint.Tell(ServiceRules.IdleWeather, task, at, $"'{weather} counts' of {whose} changes nothing: no interval of it counts riding.", "Give it an interval in riding days, hours or km, or take the line out.");
        }
    }

    /// <summary>What could not be read of a list was told already; then places no longer match, and the whole list is pointed at.</summary>
    private static Node Nth(Written<ServiceRule> task, Node? list, int index, int read) =>
        list is ListNode { Items: var items } && items.Length == read ? items[index] : list ?? task.Node;

    /// <summary>Our own bounds; common practice, no source. Kits are rebuilt well before.</summary>
    private static double Longest(Measure measure) => measure switch
    {
        Measure.RidingDays => 1000,
        Measure.Hours => 1000,
        Measure.Kilometres => 20_000,
        _ => 3650,
    };
}
