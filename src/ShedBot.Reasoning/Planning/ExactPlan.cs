namespace ShedBot.Reasoning.Planning;

/// <summary>The best course over everything that can follow, by dynamic programming on (answers given, repairs failed).</summary>
/// <remarks>
/// For single faults only: there the weights do not depend on the order of answers and failures, so each situation is valued once.
/// A step is not followed where even one who knew what is wrong could not gain by it, which leaves the result exact.
/// </remarks>
internal sealed class ExactPlan
{
    /// <summary>With more checks and repairs than this a search is sure to run into its limit, and its time would be lost.</summary>
    private const int MostSteps = 20;

    private readonly PlanTable table;
    private readonly RepairsPlan plan;
    private readonly Dictionary<UInt128, double> values = [];
    private readonly List<double[]> levels = [];
    private readonly SituationKey key;
    private readonly int most;

    /// <param name="most">The most situations to visit.</param>
    public ExactPlan(PlanTable table, int most)
    {
        this.table = table;
        this.most = most;
        key = new SituationKey(table);
        plan = new RepairsPlan(table);
    }

    /// <summary>Whether an exact plan can be tried at all: single faults, and few enough steps that it has some hope of staying within the limit.</summary>
    public static bool Serves(PlanTable table, int most) =>
        most > 0 && table.Single && table.Checks.Length + table.Repairs.Length <= MostSteps && new SituationKey(table).Fits;

    /// <summary>True once more situations turned up than were allowed: what was scored then means nothing.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>Every open step with the least expected cost of any course that begins with it, times the weight.</summary>
    public void Score(double[] weights, StepsLeft left, UInt128 at, List<ScoredMove> scores)
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
    public double Value() => Value(table.Weights, table.Start, default, 0);

    private double Value(double[] weights, StepsLeft left, UInt128 at, int depth)
    {
        if (values.TryGetValue(at, out var value)) return value;
        var total = PlanTable.Sum(weights);
        if (total <= 0 || GaveUp) return 0;
        var best = plan.Value(weights, left);
        var bound = table.LowerBound(weights);
        if (bound < best)
        {
            for (var bits = left.Checks; bits != 0;)
                best = Math.Min(best, Check(table.Checks[PlanTable.Take(ref bits)], weights, total, left, at, depth, best - bound));
            for (var bits = left.Repairs; bits != 0;)
                best = Math.Min(best, Repair(table.Repairs[PlanTable.Take(ref bits)], weights, total, left, at, depth, best));
        }

        values[at] = best;
        if (values.Count > most) GaveUp = true;
        return best;
    }

    private double Check(PlanCheck check, double[] weights, double total, StepsLeft left, UInt128 at, int depth, double limit)
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

    private double Repair(PlanRepair repair, double[] weights, double total, StepsLeft left, UInt128 at, int depth, double limit)
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
