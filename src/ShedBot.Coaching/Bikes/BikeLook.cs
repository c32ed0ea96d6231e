using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>A bike as its rider may see it: what is known, since when, and what was done.</summary>
public static class BikeLook
{
    private const int MostServices = 10;

    /// <param name="zone">In whose days dates are told.</param>
    public static Card Of(BikeProfile? bike, KnowledgeBase knowledge, TimeZoneInfo zone)
    {
        var facts = bike is null ? [] : bike.Facts.Select(f => Fact(f.Key, f.Value, knowledge, zone)).ToImmutableArray();
        var work = bike is null ? [] : bike.Work.Select(w => $"{Day(w.At, zone)}: {w.What}").ToImmutableArray();
        var services = bike is null ? [] : bike.Done.OrderByDescending(d => d.Day).ThenByDescending(d => d.LoggedAt).Take(MostServices)
            .Select(d => $"{Dates.Say(d.Day)}: {knowledge.Service.GetValueOrDefault(d.Task)?.Called ?? d.Task}").ToImmutableArray();
        var riding = bike is null ? [] : Riding(bike.Riding);
        return facts.IsEmpty && work.IsEmpty && services.IsEmpty && riding.IsEmpty
            ? new Card("Your bike", [new TextBlock("Nothing is known of it yet; I keep what you tell me and what we mend.")], [])
            : new Card("Your bike", [.. List("What you told me", facts), .. List("Riding", riding), .. List("Work done", work), .. List("Service done, newest first", services)], []);
    }

    private static ImmutableArray<string> Riding(RidingLog riding)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var days = riding.Days.Length + (riding.Folded?.Totals.Sum(t => t.Days) ?? 0);
        if (riding.LastDay is { } last) lines.Add($"{days} {(days == 1 ? "day" : "days")} logged, the last on {Dates.Say(last)}");
        if (riding.Pace is { } pace) lines.Add(string.Create(CultureInfo.InvariantCulture, $"you said about {pace.DaysPerWeek:0.#} days a week"));
        lines.AddRange(riding.Breaks.TakeLast(1).Select(b =>
            b.Until is { } until ? $"not riding from {Dates.Say(b.From)} till {Dates.Say(until)}" : $"not riding since {Dates.Say(b.From)}"));
        return lines.ToImmutable();
    }

    public static string Day(DateTimeOffset at, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(at, zone).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<CardBlock> List(string heading, ImmutableArray<string> items) =>
        items.IsEmpty ? [] : [new ListBlock(heading, items)];

    private static string Fact(string id, BikeFact fact, KnowledgeBase knowledge, TimeZoneInfo zone)
    {
        if (id == Fitting.Fact) return $"kit fitted: {fact.Value} ({fact.How} on {Day(fact.Learnt, zone)})";
        var rule = knowledge.Facts.GetValueOrDefault(id);
        var value = rule?.Values.FirstOrDefault(v => v.Id == fact.Value)?.Says ?? fact.Value;
        return $"{rule?.Called ?? id}: {value} ({fact.How} on {Day(fact.Learnt, zone)})";
    }
}
