using CsCheck;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge.Rules;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>Laws of the plan, on any riding.</summary>
public sealed class PlanLawTests
{
    private static readonly ServiceRule[] Rules =
    [
        Task("grease", RidingDays(14)),
        Task("nuts", Hours(10), Km(200)),
        Task("look", Calendar(30)) with { Sooner = [new WeatherFactor("wet", 2)] },
        Task("slack").Following("new-pads", RidingDays(1), RidingDays(2)),
    ];

    // First and last day are ridden, so that one more ride lies within the time the log speaks of; and no silence is long enough to be taken for a rest.
    private static readonly Gen<BikeProfile> Ridden = Gen.Int[1, 99].Array[0, 60].Select(days =>
        days.Concat(Enumerable.Range(0, 6).Select(i => 20 * i)).Aggregate(Bike.Did(May3.PlusDays(20)).Mended(Noon.AddDays(40), "new-pads"), (b, d) => b.Rode(May3.PlusDays(d))));

    [Fact]
    public void Of_TheSameTwice_IsEqual() => Gen.Select(Ridden, Gen.Int[0, 60]).Sample((bike, later) =>
        Assert.Equal(bike.Plan(May3.PlusDays(100 + later), Rules).AsEnumerable(), bike.Plan(May3.PlusDays(100 + later), Rules)));

    [Fact]
    public void Of_OneMoreRide_MakesNothingLater() => Gen.Select(Ridden, Gen.Int[1, 99]).Sample((bike, extra) =>
    {
        var today = May3.PlusDays(101);
        var more = bike.Rode(May3.PlusDays(extra)).Plan(today, Rules).ToDictionary(i => i.DueKey);
        foreach (var item in bike.Plan(today, Rules))
        {
            // A milestone that was reached makes room for the next; that is another due date.
            if (!more.TryGetValue(item.DueKey, out var after)) continue;
            Assert.True(after.Amount.Used >= item.Amount.Used - 1e-9);
            Assert.True((after.Expected ?? LocalDate.MaxIsoValue) <= (item.Expected ?? LocalDate.MaxIsoValue), $"{item.Expected} became {after.Expected}");
        }
    });

    [Fact]
    public void Of_AnyRiding_HasItsBandInOrderAndItsKeysApart() => Gen.Select(Ridden, Gen.Int[0, 60]).Sample((bike, later) =>
    {
        var plan = bike.Plan(May3.PlusDays(100 + later), Rules);
        Assert.Equal(plan.Length, plan.Select(i => i.DueKey).Distinct().Count());
        Assert.All(plan.Where(i => i.Latest is not null), i => Assert.True(i.Earliest <= i.Latest && i.Earliest <= i.Expected));
        Assert.Equal(plan.Select(i => i.Expected ?? LocalDate.MaxIsoValue).Order(), plan.Select(i => i.Expected ?? LocalDate.MaxIsoValue));
    });

    /// <summary>Whoever moves, or whose clock jumps, is not told anything anew: keys depend on neither.</summary>
    [Fact]
    public void Of_AnotherZoneAndDay_HasTheSameKeys() => Ridden.Sample(bike =>
    {
        var keys = bike.Plan(May3.PlusDays(101), Rules).Select(i => i.DueKey).Order().ToArray();
        foreach (var zone in new[] { "Pacific/Kiritimati", "Pacific/Pago_Pago" })
        {
            var there = ServicePlan.Of(bike, Yard.Rules(Rules), May3.PlusDays(101), DateTimeZoneProviders.Tzdb[zone]).Select(i => i.DueKey).Order();
            // A repair near midnight moves by a day with the zone, and with it which of two milestones is reached; the names stay.
            Assert.Equal(keys.Where(k => !k.Contains("new-pads", StringComparison.Ordinal)), there.Where(k => !k.Contains("new-pads", StringComparison.Ordinal)));
        }
    });
}
