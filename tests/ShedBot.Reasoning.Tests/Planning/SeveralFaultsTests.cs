using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>Several faults at once, against plain recursion over everything that can be done.</summary>
public class SeveralFaultsTests(ITestOutputHelper output)
{
    [Fact]
    public void Decide_SeveralFaults_CostsHardlyMoreThanTheLeastPossible()
    {
        var ratios = new List<double>();
        for (var seed = 1; ratios.Count < 20; seed++)
        {
            var model = seed % 2 == 0 ? RandomModels.Base(seed) : RandomModels.Clusters(seed);
            if (model.Checks.Length > 3 || model.Repairs.Length > 3) continue;
            var belief = Inferrer.Infer(model, [], new(LargestSet: model.Faults.Length, RaiseTo: model.Faults.Length));
            var least = new FaultSetOracle(model).Least();

            var decision = Planner.Decide(new PlanRequest(belief) { Weights = CostWeights.MinutesOnly });

            Assert.True(decision.ExpectedCost >= least - 1e-9, $"seed {seed}: {decision.ExpectedCost} is below the least possible, {least}");
            ratios.Add(decision.ExpectedCost / least);
        }

        output.WriteLine($"mean {ratios.Average():F5}, worst {ratios.Max():F4}, {ratios.Count} models.");
        Assert.True(ratios.Average() <= 1.01);
        Assert.True(ratios.Max() <= 1.05);
    }

    [Fact]
    public void Decide_TwoRepairsBehindOneCover_CostsTheLeastPossible()
    {
        var model = Problems.Model(
            [("bar", 0.4), ("cam", 0.3)],
            [],
            [Problems.Mend("new bar", 10, "bar", 0.9, "case"), Problems.Mend("new cam", 20, "cam", 0.8, "case")],
            [new Cover("case", new(15))],
            200);
        var belief = Inferrer.Infer(model, []);

        var decision = Planner.Decide(new PlanRequest(belief) { Weights = CostWeights.MinutesOnly });

        Assert.Equal(new FaultSetOracle(model).Least(), decision.ExpectedCost, 1e-9);
    }
}
