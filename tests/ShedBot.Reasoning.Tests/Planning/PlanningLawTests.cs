using CsCheck;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>What holds for every problem.</summary>
public class PlanningLawTests
{
    private static readonly CostWeights Minutes = CostWeights.MinutesOnly;

    // Smith 1956; for troubleshooting Heckerman, Breese and Rommelse 1995: p / C order is the best of all orders. Here against all of them.
    [Fact]
    public void RepairsOnly_IndependentRepairs_IsTheBestOfAllOrders() =>
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[1, 60], Gen.Double[0.5, 1]).Array[2, 5].Sample(drawn =>
        {
            var total = drawn.Sum(d => d.Item1) * 1.1;
            var model = Problems.Model(
                [.. drawn.Select((d, i) => ($"f{i}", d.Item1 / total)), ("other", 1 - (1 / 1.1))],
                [],
                [.. drawn.Select((d, i) => Problems.Mend($"r{i}", d.Item2, $"f{i}", d.Item3))],
                [],
                200);
            var best = Orders(drawn.Length).Min(order => Cut(order.Select(i => (Gain: d(i).Item1 / total * d(i).Item3, d(i).Item2)), 200));
            Assert.Equal(best, Problems.Cost(model, Policy.RepairsOnly), 1e-9);

            (double, double, double) d(int i) => drawn[i];
        }, iter: 300);

    // Howard 1966: information that is free never costs. Holds where what follows is planned exactly.
    [Fact]
    public void Decide_ExactPlan_NoCheckIsWorseThanItsOwnCost() =>
        Gen.Int[1, 100_000].Sample(seed =>
        {
            var model = RandomModels.Clusters(seed);
            var decision = Planner.Decide(Problems.Request(model));
            Assert.Equal(PlanMethod.Exact, decision.Method);
            foreach (var (step, cost) in decision.Considered)
            {
                if (step is not DoCheck(var id)) continue;
                var check = model.Checks[model.CheckAt(id)];
                var opening = check.Cover is { } cover ? model.Covers[model.CoverAt(cover)].OpeningCost.Minutes : 0;
                var without = Planner.Decide(Problems.Request(model) with { ChecksClosed = [id] }).ExpectedCost;
                Assert.True(cost <= without + check.Cost.Minutes + opening + 1e-9, $"{id} makes it worse");
            }
        }, iter: 40);

    [Fact]
    public void Decide_AnyProblem_IsNeverWorseThanRepairsOnlyOrHelp() =>
        Gen.Select(Gen.Int[1, 100_000], Gen.Int[0, 4]).Sample((seed, deepened) =>
        {
            var model = RandomModels.Clusters(seed);
            var table = PlanTableBuilder.FromPriors(model, Minutes);
            var repairsOnly = new RepairsPlan(table).Value(table.Weights, table.Start);
            var decision = Planner.Decide(Problems.Request(model), new(ExactSituations: 0, Deepened: deepened));
            Assert.True(decision.ExpectedCost <= Math.Min(repairsOnly, model.HelpCost) + 1e-9);
            Assert.True(decision.ExpectedCost >= PolicyCost.Least(model, Minutes) - 1e-9);
        }, iter: 50);

    // The expectation on the way is a bound on what following the rule to the end costs.
    [Fact]
    public void Decide_LookingAhead_PromisesNoLessThanItKeeps() =>
        Gen.Int[1, 100_000].Sample(seed =>
        {
            var model = RandomModels.Base(seed);
            var promised = Planner.Decide(Problems.Request(model), new(ExactSituations: 0)).ExpectedCost;
            Assert.True(Problems.Cost(model, Policy.LookAhead) <= promised + 1e-9);
        }, iter: 50);

    // U_i = 1 - sum over S of P(S) prod over f in S of (1 - prod over j <= i of (1 - s_jf)): the chance that the trouble outlives i repairs.
    [Fact]
    public void RepairsPlan_SeveralFaults_CostsWhatTheSurvivalFormulaSays() =>
        Gen.Int[1, 100_000].Sample(seed =>
        {
            var model = RandomModels.Base(seed);
            var belief = Inferrer.Infer(model, [], new(LargestSet: 3, RaiseTo: 3));
            var (table, _) = PlanTableBuilder.FromRequest(new PlanRequest(belief) { Weights = Minutes }, new(MostSets: 1000));
            var plan = new RepairsPlan(table);
            var value = plan.Value(table.Weights, table.Start);
            var order = plan.Order.ToArray().Select(i => model.Repairs[model.RepairAt(table.Repairs[i].Id)]).ToList();

            var expected = 0.0;
            for (var i = 0; i < order.Count; i++) expected += Survival(belief, order.Take(i)) * order[i].Cost.Minutes;
            Assert.Equal(expected + (Survival(belief, order) * model.HelpCost), value, 1e-9);
        }, iter: 50);

    private static double Survival(Belief belief, IEnumerable<Repair> done) => 1 - belief.Sets.Sum(set =>
        set.Probability * set.Faults.Aggregate(1.0, (all, f) => all * (1 - done.Aggregate(1.0, (left, r) =>
            left * (1 - (r.Fixes.FirstOrDefault(x => x.Fault == belief.Model.Faults[f].Id)?.Success ?? 0))))));

    private static double Cut(IEnumerable<(double Gain, double Cost)> order, double help)
    {
        var (left, spent, best) = (1.0, 0.0, help);
        foreach (var (gain, cost) in order)
        {
            spent += left * cost;
            left -= gain;
            best = Math.Min(best, spent + (left * help));
        }

        return best;
    }

    private static IEnumerable<int[]> Orders(int count) => count == 0
        ? [[]]
        : Orders(count - 1).SelectMany(order => Enumerable.Range(0, count), (order, at) => (int[])[.. order[..at], count - 1, .. order[at..]]);
}
