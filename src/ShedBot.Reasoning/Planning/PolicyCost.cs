using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>What it costs to follow a rule to the end of a case, by walking through everything that can happen: no sampling.</summary>
/// <remarks>
/// Exactly one fault is present, with chances in proportion to the priors. A check once, a repair once, then a perfect trial of the machine;
/// covers stay open; help ends the case. The number of situations grows fast: for models of up to about eight checks and eight repairs.
/// </remarks>
public static class PolicyCost
{
    /// <returns>Expected minutes to the end of the case.</returns>
    public static double ExpectedCost(DiagnosticModel model, CostWeights weights, Policy policy) =>
        ExpectedCost(model, model, weights, policy);

    /// <summary>The same when the rule plans on one model and reality follows another.</summary>
    /// <param name="believed">What the rule plans on; differs from <paramref name="truth"/> in numbers only: the same steps, costs and covers.</param>
    /// <returns>Expected minutes to the end of the case, in the true model.</returns>
    public static double ExpectedCost(DiagnosticModel truth, DiagnosticModel believed, CostWeights weights, Policy policy)
    {
        var actual = PlanTableBuilder.FromPriors(truth, weights);
        if (policy == Policy.RandomOrder) return RandomOrderCost.Of(actual);
        var walk = new PolicyWalk(actual, PlanTableBuilder.FromPriors(believed, weights), policy);
        return walk.Cost();
    }

    /// <summary>The least that any rule can do, by dynamic programming over everything that can happen.</summary>
    /// <returns>Expected minutes to the end of the case.</returns>
    /// <exception cref="OverflowException">There are more than two thousand million situations.</exception>
    public static double Least(DiagnosticModel model, CostWeights weights) =>
        new ExactPlan(PlanTableBuilder.FromPriors(model, weights)).Value();
}
