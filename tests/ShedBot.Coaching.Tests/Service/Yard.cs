using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>An invented bike and invented tasks, so that tests of the plan do not change when the club's rules do. The intervals mean nothing.</summary>
internal static class Yard
{
    public static readonly LocalDate May3 = new(2026, 5, 3);

    public static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    public static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);

    public static BikeProfile Bike { get; } = BikeProfile.New(new BikeId("b1"), new MemberId("m1"));

    public static ServiceRule Task(string id = "grease", params Interval[] every) => new(
        id, "grease", "grease it", "It wears.", 5, "none", [], [], [new RepairStep("Grease it.", null)], [.. every], [], [], [], [], [], false,
        new Origin("common practice", "the tests", new DateOnly(2026, 5, 1), "none.yaml", 1));

    public static Interval RidingDays(double amount) => new(amount, Measure.RidingDays);

    public static Interval Km(double amount) => new(amount, Measure.Kilometres);

    public static Interval Hours(double amount) => new(amount, Measure.Hours);

    public static Interval Calendar(double amount) => new(amount, Measure.Days);

    public static ServiceRule Following(this ServiceRule rule, string @event, params Interval[] at) => rule with { After = rule.After.Add(new ServiceAfter([@event], [.. at])) };

    public static KnowledgeBase Rules(params ServiceRule[] rules) =>
        Pump.Knowledge with { Service = rules.ToImmutableSortedDictionary(r => r.Id, r => r, StringComparer.Ordinal) };

    public static BikeProfile Rode(this BikeProfile bike, LocalDate day, double? km = null, double? hours = null, Weather weather = Weather.Dry) =>
        bike with { Riding = bike.Riding.Log(new RiddenDay(day, km, hours, weather), day, null, Noon).Must };

    /// <summary>A ride every so many days, the first on the first day.</summary>
    public static BikeProfile RodeOn(this BikeProfile bike, LocalDate from, int rides, int everyDays = 1) =>
        Enumerable.Range(0, rides).Aggregate(bike, (b, i) => b.Rode(from.PlusDays(i * everyDays)));

    public static BikeProfile Did(this BikeProfile bike, LocalDate day, string task = "grease") =>
        bike with { Done = DoneLog.Add(bike.Done, new ServiceDone(task, day, Noon, "told", null), day, null).Must.All };

    public static BikeProfile Mended(this BikeProfile bike, DateTimeOffset at, string repair = "new-bar") =>
        bike with { Work = bike.Work.Add(new WorkDone(repair, "fit a bar", new CaseId("c1"), at)) };

    public static BikeProfile Fitted(this BikeProfile bike, LocalDate day) => Fitting.Set(bike, day, day, Noon, "told").Must;

    public static BikeProfile Says(this BikeProfile bike, double daysPerWeek, LocalDate since, double? km = null) =>
        bike with { Riding = bike.Riding.StatePace(new StatedPace(daysPerWeek, km, null, since), Noon).Must };

    public static ImmutableArray<PlanItem> Plan(this BikeProfile bike, LocalDate today, params ServiceRule[] rules) =>
        ServicePlan.Of(bike, Rules(rules), today, Lisbon);

    public static PlanItem Only(this BikeProfile bike, LocalDate today, params ServiceRule[] rules) => Assert.Single(bike.Plan(today, rules));
}
