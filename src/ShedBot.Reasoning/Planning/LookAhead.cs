namespace ShedBot.Reasoning.Planning;

/// <summary>Every step is tried one step ahead; what follows is valued as the best of repairs only, and any one check followed by repairs only.</summary>
/// <remarks>
/// <para>ECO(c) = C_c + u V(without c) + (1 - u) sum over o of P(o) V(o), u = P(not sure). Heckerman, Breese and Rommelse 1995 compare a
/// check now with no check ever; letting a check follow a repair or another check mends the two known errors of that rule.</para>
/// <para>No decision by it is worse in expectation than the repairs-only plan: each plan it weighs contains that plan.</para>
/// <para>A 'limit' lets a sum be given up: as soon as the steps paid for, and the least that the rest can cost, reach it, what comes back is
/// some value that is not below it. Keeps its working space between calls: not for use by two threads at once.</para>
/// </remarks>
internal sealed class LookAhead(PlanTable table)
{
    // Measured on small models against the exact optimum: more of either changes nothing before the fifth digit, and costs three times as long.
    private const int LikelyRepairs = 2, LikelyChecks = 3;

    private readonly RepairsPlan plan = new(table);
    private readonly double[] after = new double[table.Weights.Length];
    private readonly double[] next = new double[table.Weights.Length];

    public RepairsPlan Plan => plan;

    /// <summary>Fills <paramref name="scores"/> with every open step, in no special order.</summary>
    public void Score(ReadOnlySpan<double> weights, StepsLeft left, List<ScoredMove> scores)
    {
        var total = PlanTable.Sum(weights);
        scores.Add(new ScoredMove(Move.Help, total * table.HelpCost));
        for (var bits = left.Repairs; bits != 0;)
        {
            var repair = table.Repairs[PlanTable.Take(ref bits)];
            if (repair.Credit(weights) <= 0) continue;
            scores.Add(new ScoredMove(Move.Repair(repair.Index), AfterRepair(repair, weights, total, left, double.PositiveInfinity)));
        }

        for (var bits = left.Checks; bits != 0;)
        {
            var check = table.Checks[PlanTable.Take(ref bits)];
            scores.Add(new ScoredMove(Move.Check(check.Index), AfterCheck(check, weights, total, left, double.PositiveInfinity)));
        }
    }

    /// <summary>
    /// The best of the likely steps, each followed by <see cref="Value"/>; times the weight. Likely are the first <see cref="LikelyRepairs"/> of
    /// the repairs-only plan and the <see cref="LikelyChecks"/> checks with the lowest ECO.
    /// </summary>
    public double Best(ReadOnlySpan<double> weights, StepsLeft left)
    {
        var total = PlanTable.Sum(weights);
        if (total <= 0) return 0;
        var repairsOnly = plan.Value(weights, left);
        var bound = table.LowerBound(weights);
        if (bound >= repairsOnly) return repairsOnly;
        Span<int> repairs = stackalloc int[LikelyRepairs];
        var repairCount = Math.Min(plan.Order.Length, LikelyRepairs);
        plan.Order[..repairCount].CopyTo(repairs);

        var best = repairsOnly;
        Span<double> costs = stackalloc double[LikelyChecks];
        Span<int> checks = stackalloc int[LikelyChecks];
        var checkCount = 0;
        for (var bits = left.Checks; bits != 0;)
        {
            var check = table.Checks[PlanTable.Take(ref bits)];
            if ((total * table.Cost(check, left.CoversOpen)) + bound >= best) continue;
            var limit = checkCount < LikelyChecks ? double.PositiveInfinity : costs[^1];
            var cost = OneCheck(check, weights, total, left, repairsOnly, limit);
            if (cost >= limit) continue;
            best = Math.Min(best, cost);
            var at = Math.Min(checkCount, LikelyChecks - 1);
            for (; at > 0 && costs[at - 1] > cost; at--) (costs[at], checks[at]) = (costs[at - 1], checks[at - 1]);
            (costs[at], checks[at]) = (cost, check.Index);
            checkCount = Math.Min(checkCount + 1, LikelyChecks);
        }

        foreach (var i in checks[..checkCount]) best = Math.Min(best, AfterCheck(table.Checks[i], weights, total, left, best));
        foreach (var i in repairs[..repairCount]) best = Math.Min(best, AfterRepair(table.Repairs[i], weights, total, left, best));
        return best;
    }

    /// <summary>The best of repairs only, and any one check followed by repairs only; times the weight.</summary>
    public double Value(ReadOnlySpan<double> weights, StepsLeft left)
    {
        var total = PlanTable.Sum(weights);
        if (total <= 0) return 0;
        var repairsOnly = plan.Value(weights, left);
        var best = repairsOnly;
        var bound = table.LowerBound(weights);
        for (var bits = left.Checks; bits != 0;)
        {
            var check = table.Checks[PlanTable.Take(ref bits)];
            // Not even an answer that told all would pay for the question.
            if ((total * table.Cost(check, left.CoversOpen)) + bound >= best) continue;
            best = Math.Min(best, OneCheck(check, weights, total, left, repairsOnly, best));
        }

        return best;
    }

    /// <summary>ECO of a check followed by repairs only, times the weight.</summary>
    public double OneCheck(
        PlanCheck check, ReadOnlySpan<double> weights, double total, StepsLeft left, double repairsOnly, double limit)
    {
        var then = left.Answered(check);
        var cost = total * table.Cost(check, left.CoversOpen);
        if (check.Unsure > 0)
            cost += check.Unsure * (check.CoverBit == 0 ? repairsOnly : plan.Value(weights, left.Unsure(check)));
        foreach (var chances in check.Chances)
        {
            if (cost >= limit) break;
            Multiply(weights, chances, next);
            cost += (1 - check.Unsure) * plan.Value(next, then);
        }

        return cost;
    }

    private double AfterCheck(PlanCheck check, ReadOnlySpan<double> weights, double total, StepsLeft left, double limit)
    {
        var cost = total * table.Cost(check, left.CoversOpen);
        var rest = table.LowerBound(weights);
        if (cost + rest >= limit) return limit;
        if (check.Unsure > 0)
        {
            cost += check.Unsure * Value(weights, left.Unsure(check));
            rest *= 1 - check.Unsure;
        }

        foreach (var chances in check.Chances)
        {
            if (cost + rest >= limit) return limit;
            Multiply(weights, chances, after);
            cost += (1 - check.Unsure) * Value(after, left.Answered(check));
            rest -= (1 - check.Unsure) * table.LowerBound(after);
        }

        return cost;
    }

    private double AfterRepair(PlanRepair repair, ReadOnlySpan<double> weights, double total, StepsLeft left, double limit)
    {
        var cost = total * table.Cost(repair, left.CoversOpen);
        if (cost >= limit) return limit;
        weights.CopyTo(after);
        repair.Fail(after);
        return cost + table.LowerBound(after) >= limit ? limit : cost + Value(after, left.Failed(repair));
    }

    public static void Multiply(ReadOnlySpan<double> weights, ReadOnlySpan<double> chances, Span<double> into)
    {
        for (var h = 0; h < into.Length; h++) into[h] = weights[h] * chances[h];
    }
}
