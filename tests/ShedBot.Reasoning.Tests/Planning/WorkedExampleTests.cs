using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>Worked examples with known costs.</summary>
public class WorkedExampleTests
{
    private const double Close = 1e-9;

    // Weighted completion times 18 and 46 for times (1, 3) and weights (10, 2): Kleinberg and Tardos, Algorithm Design, chapter 4, exercises.
    // The same sum is 12 * ECR when the chances are the weights over 12 and the costs are the times.
    [Fact]
    public void ExpectedCost_WeightedSequencingExercise_IsThePrintedSum()
    {
        Assert.Equal(18 / 12.0, Problems.Cost(Problems.TwoJobs, Policy.RepairsOnly), Close);
        Assert.Equal((18 + 46) / 24.0, Problems.Cost(Problems.TwoJobs, Policy.RandomOrder), Close);
    }

    // By hand: 5 + 0.7 * 10 + 0.5 * 30 = 27; the other five orders cost 28, 29, 34.5, 35.5 and 36.5.
    [Fact]
    public void ExpectedCost_ThreeRepairs_IsTheBestOfSixOrders()
    {
        Assert.Equal(27, Problems.Cost(Problems.ThreeRepairs, Policy.RepairsOnly), Close);
        Assert.Equal((27 + 28 + 29 + 34.5 + 35.5 + 36.5) / 6, Problems.Cost(Problems.ThreeRepairs, Policy.RandomOrder), Close);
        Assert.Equal(["r2", "r3", "r1"], Planner.Decide(Problems.Request(Problems.ThreeRepairs)).RepairOrder.ToArray());
    }

    // By hand: A first at 10, then open the lid: 0.5 * (10 + 4) + 0.2 * 4 = 7.8. Alone B is worth 0.3 / 14, below A's 0.5 / 10,
    // and so is the whole run behind the lid, 0.5 / 18 (rule of leading runs: Ottosen and Jensen 2010).
    [Fact]
    public void Decide_RepairsBehindACover_OpensItWhenItsLeadingRunWins()
    {
        var decision = Planner.Decide(Problems.Request(Problems.BehindACover));

        Assert.Equal(17.8, decision.ExpectedCost, Close);
        Assert.Equal(["a", "b", "d"], decision.RepairOrder.ToArray());
        Assert.Equal(17.8, Problems.Cost(Problems.BehindACover, Policy.RepairsOnly), Close);
    }

    // By hand: repairs only s, f, x: 4 + 0.7 * 10 + 0.2 * 20 + 0.04 * 50 = 17. Check first: the answers lead to s, f, x or to f, x, s; 16.434.
    [Theory]
    [InlineData(Policy.RepairsOnly, 17.0)]
    [InlineData(Policy.OneStep, 16.434)]
    [InlineData(Policy.LookAhead, 16.434)]
    [InlineData(Policy.Shipped, 16.434)]
    public void ExpectedCost_OneInformativeCheck_IsTheWorkedValue(Policy policy, double expected) =>
        Assert.Equal(expected, Problems.Cost(Problems.OneCheck(), policy), Close);

    [Fact]
    public void ExpectedCost_RandomOrderOfThree_IsTheMeanOverSixOrders()
    {
        // A program of other hands gives 24.38, to two places.
        Assert.Equal(24.38, Problems.Cost(Problems.OneCheck(), Policy.RandomOrder), 0.005);
        Assert.Equal(16.434, PolicyCost.Least(Problems.OneCheck(), CostWeights.MinutesOnly), Close);
    }

    [Fact]
    public void Decide_OneInformativeCheck_AsksItFirst()
    {
        var decision = Planner.Decide(Problems.Request(Problems.OneCheck()));

        Assert.Equal(new DoCheck("spark"), decision.Step);
        Assert.Equal(16.434, decision.ExpectedCost, Close);
        Assert.Equal(PlanMethod.Exact, decision.Method);
        Assert.Equal(["s", "f", "x"], decision.RepairOrder.ToArray());
        Assert.Equal(17.0, decision.Considered.Single(c => c.Step == new DoRepair("s")).ExpectedCost, 0.6);
        Assert.Equal(50.0, decision.Considered.Single(c => c.Step is GetHelp).ExpectedCost, Close);
    }
}
