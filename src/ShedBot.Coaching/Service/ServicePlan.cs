using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Service;

/// <summary>The service plan of a bike: worked out anew from its log whenever it is looked at, and kept nowhere. Pure.</summary>
/// <remarks>
/// A task is counted from the day it was last done, by itself or by a repair that counts as it; riding of that day is not counted. Never done, it is
/// counted from the fitting, when the log begins within two weeks of it; else from the first day of which riding is known, and stands as not yet known
/// until even that much riding is enough to make it due.
/// </remarks>
public static class ServicePlan
{
    /// <summary>What a task that was never done is counted from; without a day, so that a first ride that is logged late changes no key.</summary>
    private const string Start = "start";

    /// <param name="today">In the rider's zone.</param>
    /// <param name="zone">The rider's zone, for the days of repairs through cases.</param>
    /// <returns>Soonest first; what has no date next; the look before each ride last. Tasks that are not for this bike are left out.</returns>
    public static ImmutableArray<PlanItem> Of(BikeProfile bike, KnowledgeBase knowledge, LocalDate today, DateTimeZone zone)
    {
        var pace = PaceEstimator.Of(bike.Riding, today);
        var ledger = new Ledger(bike.Riding, pace, today);
        var reckoning = new Reckoning(bike.Id.Value, ledger, new Outlook(bike.Riding, pace, ledger.Next), today);
        return
        [
            .. knowledge.Service.Values.Where(r => IsFor(bike, knowledge, r, today, zone))
                .Select(r => Item(bike, r, zone, reckoning)).OfType<PlanItem>()
                .OrderBy(i => i.Rule.BeforeEachRide).ThenBy(i => i.Expected ?? LocalDate.MaxIsoValue).ThenByDescending(i => i.Amount.Share)
                .ThenBy(i => i.Rule.Id, StringComparer.Ordinal),
        ];
    }

    private static PlanItem? Item(BikeProfile bike, ServiceRule rule, DateTimeZone zone, Reckoning reckoning)
    {
        if (rule.BeforeEachRide)
        {
            var none = new UsedAmount(0, 0, Measure.RidingDays, false);
            return new PlanItem(rule, reckoning.Key(rule, "each-ride"), DueState.Done, null, null, null, none, "Before every ride.");
        }

        var known = reckoning.Ledger.Known ?? reckoning.Today;
        return Every(bike, rule, zone, known, reckoning)
            .Concat(rule.After.Select(a => Milestones.Of(bike, rule, a, Anchor.Event(bike, a, zone, known), reckoning)).OfType<PlanItem>())
            .OrderByDescending(i => i.State is DueState.Due or DueState.Overdue).ThenBy(i => i.Expected ?? LocalDate.MaxIsoValue)
            .ThenByDescending(i => i.Amount.Share).FirstOrDefault();
    }

    /// <summary>All intervals of a task have one key: whichever comes first, it is one due date.</summary>
    private static IEnumerable<PlanItem> Every(BikeProfile bike, ServiceRule rule, DateTimeZone zone, LocalDate known, Reckoning reckoning)
    {
        var done = Anchor.Done(bike, rule, zone);
        var fitted = Fitting.DayOf(bike);
        var (key, anchor, sure) = (done, fitted) switch
        {
            ({ } d, null) => (d.Key, d, true),
            ({ } d, { } f) when d.Day >= f => (d.Key, d, true),
            // Another kit was fitted since: what was done before was done to the old one.
            ({ }, { } f) => (Anchor.Fitted(f).Key, Anchor.Fitted(f), true),
            (null, { } f) when f > known => (Anchor.Fitted(f).Key, Anchor.Fitted(f), true),
            (null, { } f) when Anchor.InTime(f, known) => (Start, Anchor.Fitted(f), true),
            _ => (Start, new Anchor(Start, known, true, ""), false),
        };
        return rule.Every.Select(e => reckoning.Of(rule, reckoning.Key(rule, key), anchor, e, sure));
    }

    /// <summary>As the coach takes them: a fact that has aged is not known any more, and holds nothing back.</summary>
    private static bool IsFor(BikeProfile bike, KnowledgeBase knowledge, ServiceRule rule, LocalDate today, DateTimeZone zone) => rule.OnlyIf.All(c =>
        !bike.Facts.TryGetValue(c.Fact, out var fact) || c.Values.Contains(fact.Value)
        || (knowledge.Facts.TryGetValue(c.Fact, out var known) && Period.DaysBetween(RiderDays.Of(fact.Learnt, zone), today) > known.KeepsForDays));
}
