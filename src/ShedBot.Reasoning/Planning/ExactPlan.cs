namespace ShedBot.Reasoning.Planning;

/// <summary>The best course over everything that can follow, by dynamic programming on (answers given, repairs failed).</summary>
/// <remarks>
/// For single faults only: there the weights do not depend on the order of answers and failures, so each situation is valued once.
/// A step is not followed where even one who knew what is wrong could not gain by it, which leaves the result exact.
/// </remarks>
internal sealed class ExactPlan
{
    private readonly PlanTable table;
    private readonly RepairsPlan plan;
    private readonly SituationKey key;
    private readonly double[] values;
    private readonly List<double[]> levels = [];

    /// <param name="table">One that it <see cref="Serves"/>.</param>
    public ExactPlan(PlanTable table)
    {
        this.table = table;
        plan = new RepairsPlan(table);
        key = new SituationKey(table);
        values = new double[checked((int)key.Situations)];
        Array.Fill(values, double.NaN);
    }

    /// <summary>Whether an exact plan has at most so many situations to value; about half a microsecond each.</summary>
    public static bool Serves(PlanTable table, int most) => table.Single && new SituationKey(table).Situations <= most;

    /// <summary>Every open step with the least expected cost of any course that begins with it, times the weight.</summary>
    public void Score(double[] weights, StepsLeft left, long at, List<ScoredMove> scores)
    {
        var total = PlanTable.Sum(weights);
        scores.Add(new ScoredMove(Move.Help, total * table.HelpCost));
        for (var bits = left.Repairs; bits != 0;)
        {
            var repair = table.Repairs[PlanTable.Take(ref bits)];
            if (repair.Credit(weights) > 0)
                scores.Add(new ScoredMove(Move.Repair(repair.Index), Repair(repair, weights, total, left, at, 0, double.PositiveInfinity)));
        }

        for (var bits = left.Checks; bits != 0;)
        {
            var check = table.Checks[PlanTable.Take(ref bits)];
            scores.Add(new ScoredMove(Move.Check(check.Index), Check(check, weights, total, left, at, 0, double.PositiveInfinity)));
        }
    }

    /// <summary>The least expected cost of any course, times the weight.</summary>
    public double Value() => Value(table.Weights, table.Start, 0, 0);

    private double Value(double[] weights, StepsLeft left, long at, int depth)
    {
        if (!double.IsNaN(values[at])) return values[at];
        var total = PlanTable.Sum(weights);
        if (total <= 0) return 0;
        var best = plan.Value(weights, left);
        var bound = table.LowerBound(weights);
        if (bound < best)
        {
            for (var bits = left.Checks; bits != 0;)
                best = Math.Min(best, Check(table.Checks[PlanTable.Take(ref bits)], weights, total, left, at, depth, best - bound));
            for (var bits = left.Repairs; bits != 0;)
                best = Math.Min(best, Repair(table.Repairs[PlanTable.Take(ref bits)], weights, total, left, at, depth, best));
        }

        return values[at] = best;
    }

    private double Check(PlanCheck check, double[] weights, double total, StepsLeft left, long at, int depth, double limit)
    {
        var cost = total * table.Cost(check, left.CoversOpen);
        if (cost >= limit) return double.PositiveInfinity;
        if (check.Unsure > 0)
            cost += check.Unsure * Value(weights, left.Unsure(check), key.Unsure(at, check), depth);
        for (var state = 0; state < check.Chances.Length; state++)
        {
            var next = Level(depth);
            LookAhead.Multiply(weights, check.Chances[state], next);
            cost += (1 - check.Unsure) * Value(next, left.Answered(check), key.Answered(at, check, state), depth + 1);
        }

        return cost;
    }

    private double Repair(PlanRepair repair, double[] weights, double total, StepsLeft left, long at, int depth, double limit)
    {
        var cost = total * table.Cost(repair, left.CoversOpen);
        if (cost >= limit) return double.PositiveInfinity;
        var next = Level(depth);
        weights.CopyTo(next, 0);
        if (repair.Fail(next) <= 0 || cost + table.LowerBound(next) >= limit) return double.PositiveInfinity;
        return cost + Value(next, left.Failed(repair), key.Failed(at, repair), depth + 1);
    }

    private double[] Level(int depth)
    {
        while (levels.Count <= depth) levels.Add(new double[table.Weights.Length]);
        return levels[depth];
    }
}
