namespace ShedBot.Reasoning.Planning;

/// <summary>Follows a policy through every answer and failure that can come, each situation once.</summary>
internal sealed class PolicyWalk
{
    private readonly PlanTable actual;
    private readonly PlanTable believed;
    private readonly PolicyChooser chooser;
    private readonly SituationKey key;
    private readonly Dictionary<long, double> costs = [];

    public PolicyWalk(PlanTable actual, PlanTable believed, Policy policy)
    {
        this.actual = actual;
        this.believed = believed;
        chooser = new PolicyChooser(believed, policy, new PlannerOptions());
        key = new SituationKey(believed);
        if (key.Situations > 1L << 53) throw new ArgumentException("There are too many situations to walk through.", nameof(believed));
    }

    public double Cost() => Cost(actual.Weights, believed.Weights, believed.Start, 0);

    private double Cost(double[] weights, double[] belief, StepsLeft left, long at)
    {
        var total = PlanTable.Sum(weights);
        if (total <= 0) return 0;
        if (costs.TryGetValue(at, out var cost)) return cost;
        var move = chooser.Choose(belief, left, at);
        cost = move.Kind switch
        {
            MoveKind.Check => AfterCheck(move.Index, weights, belief, total, left, at),
            MoveKind.Repair => AfterRepair(move.Index, weights, belief, total, left, at),
            _ => total * actual.HelpCost,
        };
        return costs[at] = cost;
    }

    private double AfterCheck(int index, double[] weights, double[] belief, double total, StepsLeft left, long at)
    {
        var (check, trusted) = (actual.Checks[index], believed.Checks[index]);
        var cost = total * actual.Cost(check, left.CoversOpen);
        if (check.Unsure > 0) cost += check.Unsure * Cost(weights, belief, left.Unsure(check), key.Unsure(at, check));
        for (var state = 0; state < check.Chances.Length; state++)
        {
            var (next, nextBelief) = (new double[weights.Length], new double[weights.Length]);
            LookAhead.Multiply(weights, check.Chances[state], next);
            LookAhead.Multiply(belief, trusted.Chances[state], nextBelief);
            cost += (1 - check.Unsure) * Cost(next, nextBelief, left.Answered(check), key.Answered(at, check, state));
        }

        return cost;
    }

    private double AfterRepair(int index, double[] weights, double[] belief, double total, StepsLeft left, long at)
    {
        var repair = actual.Repairs[index];
        double[] next = [.. weights], nextBelief = [.. belief];
        repair.Fail(next);
        believed.Repairs[index].Fail(nextBelief);
        return (total * actual.Cost(repair, left.CoversOpen)) + Cost(next, nextBelief, left.Failed(repair), key.Failed(at, repair));
    }
}
