namespace ShedBot.Reasoning.Planning;

/// <summary>Scores every step by <see cref="LookAhead"/>, then looks at the most promising ones one step deeper.</summary>
/// <remarks>
/// A deeper score is never higher, since what is looked at then includes what was looked at before, and still stands for a course that can be
/// followed: so the best step only gets better, and the promise not to be worse than repairs only is kept.
/// </remarks>
internal sealed class DeeperLook(PlanTable table, int count)
{
    private readonly LookAhead ahead = new(table);
    private readonly MoveOrder order = new(table);
    private readonly double[] after = new double[table.Weights.Length];

    /// <summary>Fills <paramref name="scores"/> with every open step.</summary>
    public void Score(ReadOnlySpan<double> weights, StepsLeft left, List<ScoredMove> scores)
    {
        ahead.Score(weights, left, scores);
        if (count == 0) return;
        var total = PlanTable.Sum(weights);
        var least = double.PositiveInfinity;
        foreach (var (move, score) in order.Sorted(scores).Take(count))
        {
            var deeper = move.Kind switch
            {
                MoveKind.Check => AfterCheck(table.Checks[move.Index], weights, total, left, least),
                MoveKind.Repair => AfterRepair(table.Repairs[move.Index], weights, total, left),
                _ => score,
            };
            least = Math.Min(least, deeper);
            scores[scores.FindIndex(s => s.Move == move)] = new ScoredMove(move, Math.Min(deeper, score));
        }
    }

    /// <summary>Given up, with no better a score than before, as soon as it cannot come below <paramref name="limit"/>.</summary>
    private double AfterCheck(PlanCheck check, ReadOnlySpan<double> weights, double total, StepsLeft left, double limit)
    {
        var cost = total * table.Cost(check, left.CoversOpen);
        var rest = table.LowerBound(weights) * (1 - check.Unsure);
        if (check.Unsure > 0) cost += check.Unsure * ahead.Best(weights, left.Unsure(check));
        foreach (var chances in check.Chances)
        {
            // A tie is worked out to the end, so that it is broken by the rule and not by the order here.
            if (cost + rest > limit * (1 + 1e-9)) return double.PositiveInfinity;
            LookAhead.Multiply(weights, chances, after);
            cost += (1 - check.Unsure) * ahead.Best(after, left.Answered(check));
            rest -= (1 - check.Unsure) * table.LowerBound(after);
        }

        return cost;
    }

    private double AfterRepair(PlanRepair repair, ReadOnlySpan<double> weights, double total, StepsLeft left)
    {
        weights.CopyTo(after);
        repair.Fail(after);
        return (total * table.Cost(repair, left.CoversOpen)) + ahead.Best(after, left.Failed(repair));
    }
}
