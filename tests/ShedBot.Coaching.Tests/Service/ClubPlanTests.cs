using CsCheck;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Rules;
using static ShedBot.Coaching.Tests.Service.Yard;

namespace ShedBot.Coaching.Tests.Service;

/// <summary>The plan of the club's own tasks, whatever they are at the time.</summary>
public sealed class ClubPlanTests
{
    private static readonly KnowledgeBase Club =
        KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Repository.Root, "knowledge"))).Knowledge!;

    [Fact]
    public void Of_NewBuildRiddenAndServicedAsItFallsDue_ComesRoundToEveryTaskThatCanFallDue()
    {
        var bike = Bike.Fitted(May3);
        var due = new HashSet<string>();
        var keys = new Dictionary<string, string>();
        for (var i = 0; i < 500; i++)
        {
            var today = May3.PlusDays(i);
            bike = bike.Rode(today, 30, 1.5, (Weather)(i % 3));
            foreach (var item in ServicePlan.Of(bike, Club, today, Lisbon).Where(p => p.State is DueState.Due or DueState.Overdue))
            {
                due.Add(item.Rule.Id);
                Assert.True(keys.TryAdd(item.DueKey, item.Rule.Id), $"{item.DueKey} fell due again after it was done.");
                bike = bike.Did(today, item.Rule.Id);
            }
        }

        // What follows a repair only, or comes no more often than once in those days, may stay out.
        var often = Club.Service.Values.Where(r => !r.BeforeEachRide && r.OnlyIf.IsEmpty && r.Every.Any(e => e is { Measure: not Measure.Days, Amount: <= 250 } or { Amount: <= 400 }));
        Assert.Equal([], often.Select(r => r.Id).Except(due));
        Assert.NotEmpty(due);
    }

    [Fact]
    public void Of_EveryRepairProved_StartsWhatFollowsIt()
    {
        var events = Club.Service.Values.SelectMany(r => r.After).SelectMany(a => a.Events).Distinct().Where(Club.Repairs.ContainsKey).ToArray();

        Assert.NotEmpty(events);
        Assert.All(events, repair =>
        {
            var bike = Bike.RodeOn(May3.PlusDays(-10), 10).Mended(Noon, repair).Rode(May3.PlusDays(1), 20, 1);
            var follows = ServicePlan.Of(bike, Club, May3.PlusDays(1), Lisbon).Where(i => i.DueKey.Contains($"|{repair}@", StringComparison.Ordinal));
            Assert.NotEmpty(follows);
        });
    }

    [Fact]
    public void Of_AnyBike_HasEachTaskOnceAndEachKeyOnce() => Gen.Int[0, 200].Array[0, 50].Sample(days =>
    {
        var bike = days.Distinct().Aggregate(Bike, (b, d) => d % 7 == 0 ? b.Did(May3.PlusDays(d), Club.Service.Keys.ElementAt(d % Club.Service.Count)) : b.Rode(May3.PlusDays(d), d % 5 + 1));
        var plan = ServicePlan.Of(bike, Club, May3.PlusDays(201), Lisbon);
        Assert.Equal(plan.Length, plan.Select(i => i.Rule.Id).Distinct().Count());
        Assert.Equal(plan.Length, plan.Select(i => i.DueKey).Distinct().Count());
        Assert.All(plan, i => Assert.NotEqual("", i.Because));
    }, iter: 200);
}
