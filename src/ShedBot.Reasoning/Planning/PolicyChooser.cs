namespace ShedBot.Reasoning.Planning;

/// <summary>The step a <see cref="Policy"/> takes in a situation.</summary>
internal sealed class PolicyChooser(PlanTable table, Policy policy, PlannerOptions options)
{
    private readonly LookAhead ahead = new(table);
    private readonly DeeperLook deeper = new(table, options.Deepened);
    private readonly MoveOrder order = new(table);
    private readonly List<ScoredMove> scores = [];
    private readonly bool serves = ExactPlan.Serves(table, options.ExactSituations);
    private ExactPlan? exact;

    public Move Choose(double[] weights, StepsLeft left, long at)
    {
        scores.Clear();
        switch (policy)
        {
            case Policy.RepairsOnly:
                ahead.Plan.Value(weights, left);
                return First();
            case Policy.OneStep:
                return OneStep(weights, left);
            case Policy.Shipped when serves:
                Exact(weights, left, at);
                break;
            default:
                deeper.Score(weights, left, scores);
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
            var cost = ahead.OneCheck(check, weights, total, left, repairsOnly, double.PositiveInfinity);
            if (cost < best) (best, move) = (cost, Move.Check(check.Index));
        }

        return move;
    }

    /// <summary>What was worked out for one situation serves for those after it.</summary>
    private void Exact(double[] weights, StepsLeft left, long at) =>
        (exact ??= new ExactPlan(table)).Score(weights, left, at, scores);
}
