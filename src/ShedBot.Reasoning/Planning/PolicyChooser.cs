namespace ShedBot.Reasoning.Planning;

/// <summary>The step a <see cref="Policy"/> takes in a situation.</summary>
internal sealed class PolicyChooser(PlanTable table, Policy policy, PlannerOptions options)
{
    private readonly LookAhead ahead = new(table);
    private readonly MoveOrder order = new(table);
    private readonly List<ScoredMove> scores = [];
    private ExactPlan? exact;

    public Move Choose(double[] weights, StepsLeft left, UInt128 at)
    {
        scores.Clear();
        switch (policy)
        {
            case Policy.RepairsOnly:
                ahead.Plan.Value(weights, left);
                return First();
            case Policy.OneStep:
                return OneStep(weights, left);
            case Policy.Shipped when Exact(weights, left, at):
                break;
            default:
                ahead.Score(weights, left, scores);
                break;
        }

        return order.Best(scores).Move;
    }

    private Move First() => ahead.Plan.Order is [var first, ..] ? Move.Repair(first) : Move.Help;

    private Move OneStep(double[] weights, StepsLeft left)
    {
        var total = PlanTable.Sum(weights);
        var best = ahead.Plan.Value(weights, left);
        var (repairsOnly, move) = (best, First());
        for (var bits = left.Checks; bits != 0;)
        {
            var check = table.Checks[PlanTable.Take(ref bits)];
            var cost = ahead.OneCheck(check, weights, total, left, repairsOnly);
            if (cost < best) (best, move) = (cost, Move.Check(check.Index));
        }

        return move;
    }

    /// <summary>Once one situation was small enough, so is everything after it, and what was worked out for it serves again.</summary>
    private bool Exact(double[] weights, StepsLeft left, UInt128 at)
    {
        if (!ExactPlan.Serves(table, options.ExactStates)) return false;
        var plan = exact ?? new ExactPlan(table, options.ExactStates);
        plan.Score(weights, left, at, scores);
        if (plan.GaveUp)
        {
            scores.Clear();
            return false;
        }

        exact = plan;
        return true;
    }
}
