using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>
/// Looking ahead against the exact optimum, on problems that no constant was chosen on. The bounds are honest ones for a rule that cannot see to
/// the end; that the optimum itself is right is shown against independent values in <see cref="SharedModelCostTests"/>.
/// </summary>
public class RandomModelCostTests(ITestOutputHelper output)
{
    private const int Models = 50;
    private static readonly CostWeights Minutes = CostWeights.MinutesOnly;

    [Fact]
    public void LookAhead_Base_IsNearTheOptimum() => IsNear(RandomModels.Base, Models, 1.003, 1.06);

    [Fact]
    public void LookAhead_Clusters_IsNearTheOptimum() => IsNear(RandomModels.Clusters, Models, 1.003, 1.06);

    [Fact]
    public void LookAhead_Noisy_IsNearTheOptimum() => IsNear(RandomModels.Noisy, Models, 1.003, 1.06);

    [Fact]
    public void LookAhead_Big_IsNearTheOptimum() => IsNear(RandomModels.Big, 6, 1.01, 1.05);

    // Log-odds noise of 0.5 is about what a careful expert's numbers are off by. What is left of the gain then is still most of it.
    [Fact]
    public void LookAhead_PlanningOnWrongNumbers_IsStillFarBetterThanRepairsOnly()
    {
        var (ahead, repairs) = (Wrong(Policy.LookAhead), Wrong(Policy.RepairsOnly));
        Tell("wrong numbers, looking ahead", ahead);
        Tell("wrong numbers, repairs only", repairs);
        Assert.True(ahead.Average() <= 1.03);
        Assert.True(repairs.Average() - 1 >= 3 * (ahead.Average() - 1));

        static List<double> Wrong(Policy policy) => [.. Enumerable.Range(1, Models).Select(seed =>
        {
            var truth = RandomModels.Base(seed);
            var believed = RandomModels.Misjudged(truth, 0.5, seed);
            return PolicyCost.ExpectedCost(truth, believed, Minutes, policy) / PolicyCost.Least(truth, Minutes);
        })];
    }

    private void IsNear(Func<int, DiagnosticModel> draw, int count, double mean, double worst)
    {
        var ratios = new List<double>();
        for (var seed = 1; seed <= count; seed++)
        {
            var model = draw(seed);
            var cost = PolicyCost.ExpectedCost(model, Minutes, Policy.LookAhead);
            var least = PolicyCost.Least(model, Minutes);
            Assert.True(cost <= PolicyCost.ExpectedCost(model, Minutes, Policy.RepairsOnly) + 1e-9, $"seed {seed}: worse than repairs only");
            Assert.True(cost >= least - 1e-9, $"seed {seed}: below the least possible");
            ratios.Add(cost / least);
        }

        Tell(draw.Method.Name, ratios);
        Assert.True(ratios.Average() <= mean, $"mean {ratios.Average()}");
        Assert.True(ratios.Count(r => r <= 1.02) >= 0.97 * ratios.Count);
        Assert.True(ratios.Max() <= worst, $"worst {ratios.Max()}");
    }

    private void Tell(string what, List<double> ratios) =>
        output.WriteLine($"{what}: mean {ratios.Average():F5}, worst {ratios.Max():F4}, {ratios.Count} models.");
}
