using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Tests.Simulation;

public class UncoachedRideTests
{
    // By hand from the rules of the pump, chance over cost after 'no water': the tap .97 * .97 * twice as common / 15; the hose .875 * .875 / 20;
    // the wheel .675 * .875 / (20 + 10 + 6): tap, hose, wheel.
    [Fact]
    public void Order_AfterNoWater_FallsInChanceOverCost()
    {
        var belief = Inferrer.Infer(PumpRules.Knowledge.Model, [new FindingTold("no-water", Finding.Yes, AnswerError.Even(0.02))]);
        var order = UncoachedRide.Order(belief, Hazard.Medium).Take(3);
        Assert.Equal([new DoRepair("open-tap"), new DoRepair("straighten-hose"), new DoRepair("new-wheel")], order);
    }

    // The tap first and in vain, 15 minutes, then the hose, 20: 35 minutes, no money.
    [Fact]
    public void InFixedOrder_HoseKinkedAndMended_CostsTapAndHose()
    {
        var rides = Rides("hose-kinked", "no-water").Where(r => r is { Ending: Ending.Mended, Repairs: 2 }).ToList();
        Assert.NotEmpty(rides);
        Assert.All(rides, r =>
        {
            Assert.Equal(35, r.Minutes, 12);
            Assert.Equal(35, r.Cost, 12);
            Assert.Equal(0, r.Asked);
        });
    }

    [Fact]
    public void InFixedOrder_NothingListed_EndsWithAHumanAndPaysForIt()
    {
        var rides = Rides(Knowledge.KnowledgeBase.SomethingElse, "no-water").ToList();
        Assert.All(rides, r => Assert.Equal(Ending.HandedOver, r.Ending));
        Assert.All(rides, r => Assert.True(r.Cost >= PumpRules.Knowledge.Model.HelpCost));
    }

    [Fact]
    public void InRandomOrder_NothingListed_TakesEveryStepOnceUnlessStopped()
    {
        var model = PumpRules.Knowledge.Model;
        for (var i = 0; i < 10; i++)
        {
            var ride = UncoachedRide.InRandomOrder(PumpRules.Knowledge, PumpRules.Rider(Knowledge.KnowledgeBase.SomethingElse, i), new Habits(), Hazard.Medium);
            if (ride.Ending != Ending.HandedOver) continue;
            Assert.Equal((model.Checks.Length, model.Repairs.Length), (ride.Asked, ride.Repairs));
        }
    }

    private static IEnumerable<Ride> Rides(string fault, string complaint)
    {
        var draw = new RiderDraw(PumpRules.Knowledge, new RidersWanted(complaint, fault));
        return Enumerable.Range(0, 20).Select(i => draw.Draw(7, i)).Where(r => r.Complaints.Length == 1)
            .Select(r => UncoachedRide.InFixedOrder(PumpRules.Knowledge, r, new Habits(), Hazard.Medium, null));
    }
}
