using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>A bike as its rider may see it: what is known, since when, what follows from it, and what was done.</summary>
public static class BikeLook
{
    private const int MostServices = 10;

    public static Card Of(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var today = speaker.DayOf(at);
        var fields = BikeSheet.Of(knowledge);
        var facts = fields.Where(f => bike.Facts.ContainsKey(f.Id)).Select(f => FieldLine(f, bike, speaker, today))
            .Concat(bike.Facts.Where(f => fields.All(s => s.Id != f.Key)).Select(f => Other(f.Key, f.Value, knowledge, speaker))).ToImmutableArray();
        var work = bike.Work.Select(w => $"{Dates.Iso(RiderDays.Of(w.At, speaker.Zone))}: {w.What}").ToImmutableArray();
        var services = bike.Done.OrderByDescending(d => d.Day).ThenByDescending(d => d.LoggedAt).Take(MostServices)
            .Select(d => $"{Dates.Say(d.Day)}: {knowledge.Service.GetValueOrDefault(d.Task)?.Called ?? d.Task}").ToImmutableArray();
        var riding = Riding(bike.Riding);
        var wanted = fields.Count(f => FactAge.IsWanted(f, bike, today, speaker.Zone));
        ImmutableArray<CardBlock> known =
        [
            .. Say.List("What is known", facts), .. Say.List("What follows from it", SheetFigures.Of(bike, speaker.Units)), .. Say.List("Riding", riding),
            .. Say.List("Work done", work), .. Say.List("Service done, newest first", services),
        ];
        return new Card(
            "Your bike",
            [
                .. known.IsEmpty ? [Say.Text("Nothing is known of it yet; I keep what you tell me and what we mend.")] : known,
                .. wanted > 0 && speaker.Ways.SetUp.Length > 0 ? [Say.Text($"{wanted} more could be told, none of it must: {speaker.Ways.SetUp}")] : Array.Empty<CardBlock>(),
            ],
            []);
    }

    /// <returns>As in "bar length: 18.2 mm (told on 2026-05-01, 8 months ago: measure again)".</returns>
    internal static string FieldLine(SheetField field, BikeProfile bike, Speaker speaker, LocalDate today)
    {
        var fact = bike.Facts[field.Id];
        var learnt = RiderDays.Of(fact.Learnt, speaker.Zone);
        var age = FactAge.IsStale(field, fact, bike, today, speaker.Zone) ? $", {FactAge.Ago(Period.DaysBetween(learnt, today))}: {field.Again}" : "";
        var doubt = field.Kind.Doubt(fact.Value) is { } open ? $"; {open}" : "";
        return $"{field.Called}: {field.Kind.Show(fact.Value, speaker.Units)}{doubt} ({fact.How} on {Dates.Iso(learnt)}{age})";
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

    /// <summary>What the rules ask for now and then; it is no part of the sheet.</summary>
    private static string Other(string id, BikeFact fact, KnowledgeBase knowledge, Speaker speaker)
    {
        var rule = knowledge.Facts.GetValueOrDefault(id);
        var value = rule?.Values.FirstOrDefault(v => v.Id == fact.Value)?.Says ?? fact.Value;
        return $"{rule?.Called ?? id}: {value} ({fact.How} on {Dates.Iso(RiderDays.Of(fact.Learnt, speaker.Zone))})";
    }
}
