using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>A bike as its rider may see it: what is known, since when, and what was done.</summary>
public static class BikeLook
{
    /// <param name="zone">In whose days dates are told.</param>
    public static Card Of(BikeProfile? bike, KnowledgeBase knowledge, TimeZoneInfo zone)
    {
        var facts = bike is null ? [] : bike.Facts.Select(f => Fact(f.Key, f.Value, knowledge, zone)).ToImmutableArray();
        var work = bike is null ? [] : bike.Work.Select(w => $"{Day(w.At, zone)}: {w.What}").ToImmutableArray();
        return facts.IsEmpty && work.IsEmpty
            ? new Card("Your bike", [new TextBlock("Nothing is known of it yet; I keep what you tell me and what we mend.")], [])
            : new Card("Your bike", [.. List("What you told me", facts), .. List("Work done", work)], []);
    }

    public static string Day(DateTimeOffset at, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(at, zone).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<CardBlock> List(string heading, ImmutableArray<string> items) =>
        items.IsEmpty ? [] : [new ListBlock(heading, items)];

    private static string Fact(string id, BikeFact fact, KnowledgeBase knowledge, TimeZoneInfo zone)
    {
        var rule = knowledge.Facts.GetValueOrDefault(id);
        var value = rule?.Values.FirstOrDefault(v => v.Id == fact.Value)?.Says ?? fact.Value;
        return $"{rule?.Called ?? id}: {value} ({fact.How} on {Day(fact.Learnt, zone)})";
    }
}
