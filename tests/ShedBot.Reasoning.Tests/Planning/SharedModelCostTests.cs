using System.Collections.Concurrent;
using ShedBot.Reasoning.Exchange;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;
using ShedBot.Reasoning.Tests.Exchange;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>
/// Against expected costs that a program of other hands computed exactly: the optimum by dynamic programming, and two published rules
/// (p / C with help and cost clusters; one-step value of information: Heckerman, Breese and Rommelse 1995).
/// </summary>
public class SharedModelCostTests(ITestOutputHelper output)
{
    private static readonly CostWeights Minutes = CostWeights.MinutesOnly;
    private static readonly ConcurrentDictionary<(string Id, Policy Policy), double> Costs = new();

    [Fact]
    public void Least_SharedModels_EqualsIndependentOptimum() =>
        Compare("optimal_expected_cost", model => PolicyCost.Least(model, Minutes), 1e-9);

    [Fact]
    public void ExpectedCost_RepairsOnly_EqualsIndependentValue() =>
        Compare("pc_expected_cost", model => PolicyCost.ExpectedCost(model, Minutes, Policy.RepairsOnly), 1e-9);

    [Fact]
    public void ExpectedCost_OneStep_EqualsIndependentValue() =>
        Compare("one_step_expected_cost", model => PolicyCost.ExpectedCost(model, Minutes, Policy.OneStep), 1e-9);

    [Theory]
    [InlineData(Policy.LookAhead)]
    [InlineData(Policy.Shipped)]
    public void ExpectedCost_BaseAndClusters_IsNearTheOptimum(Policy policy)
    {
        var ratios = Ratios(policy, "base", "clusters");
        if (ratios.Count == 0) return;
        Assert.True(ratios.Average() <= 1.003, $"mean {ratios.Average()}");
        Assert.True(ratios.Count(r => r <= 1.02) >= 0.97 * ratios.Count);
        Assert.True(ratios.Max() <= 1.06, $"worst {ratios.Max()}");
    }

    [Theory]
    [InlineData(Policy.LookAhead)]
    [InlineData(Policy.Shipped)]
    public void ExpectedCost_Big_IsNearTheOptimum(Policy policy)
    {
        var ratios = Ratios(policy, "big");
        if (ratios.Count == 0) return;
        Assert.True(ratios.Average() <= 1.01, $"mean {ratios.Average()}");
        Assert.True(ratios.Max() <= 1.05, $"worst {ratios.Max()}");
    }

    [Theory]
    [InlineData(Policy.OneStep)]
    [InlineData(Policy.LookAhead)]
    [InlineData(Policy.Shipped)]
    public void ExpectedCost_AnyRuleWithChecks_IsNeverWorseThanRepairsOnly(Policy policy)
    {
        foreach (var line in SharedModels.Read(output.WriteLine))
        {
            var cost = Cost(line, policy);
            Assert.True(cost <= line.Costs["pc_expected_cost"] + 1e-9, $"{line.Id}: {cost}");
            Assert.True(cost >= line.Costs["optimal_expected_cost"] - 1e-9, $"{line.Id}: {cost} is below the least possible");
        }
    }

    // The bounds are what the published rule was measured to keep with log-odds noise of 0.5 on priors, links, leaks and successes.
    [Fact]
    public void ExpectedCost_PlanningOnWrongNumbers_LosesAtMostTwoPercent()
    {
        var models = SharedModels.Read(output.WriteLine).Where(line => line.Family == "base").ToList();
        if (models.Count == 0) return;
        var ratios = Enumerable.Range(0, 3 * models.Count).Select(seed =>
        {
            var line = models[seed % models.Count];
            var believed = RandomModels.Misjudged(line.Model, 0.5, seed);
            return PolicyCost.ExpectedCost(line.Model, believed, Minutes, Policy.LookAhead) / line.Costs["optimal_expected_cost"];
        }).ToList();
        output.WriteLine($"wrong numbers: mean {ratios.Average():F4}, worst {ratios.Max():F3}, {ratios.Count} draws.");
        Assert.True(ratios.Average() <= 1.02);
        Assert.True(ratios.Count(r => r <= 1.05) >= 0.9 * ratios.Count);
    }

    // Some take a second: each is walked through once for all tests.
    private static double Cost(ModelLine line, Policy policy) =>
        Costs.GetOrAdd((line.Id, policy), _ => PolicyCost.ExpectedCost(line.Model, Minutes, policy));

    private void Compare(string field, Func<DiagnosticModel, double> cost, double close)
    {
        var models = SharedModels.Read(output.WriteLine);
        foreach (var line in models) Assert.Equal(line.Costs[field], cost(line.Model), close);
        output.WriteLine($"{models.Count} models compared.");
    }

    private List<double> Ratios(Policy policy, params string[] families)
    {
        var ratios = SharedModels.Read(output.WriteLine)
            .Where(line => families.Contains(line.Family))
            .Select(line => Cost(line, policy) / line.Costs["optimal_expected_cost"]).ToList();
        if (ratios.Count > 0) output.WriteLine($"{policy}, {string.Join(" + ", families)}: mean {ratios.Average():F5}, worst {ratios.Max():F4}, {ratios.Count} models.");
        return ratios;
    }
}
