namespace ShedBot.Reasoning.Planning;

/// <summary>The cost of doing all repairs in a random order, then help: the mean over every order, exact.</summary>
/// <remarks>Every set of repairs done is valued once, so 2^n situations for n repairs.</remarks>
internal sealed class RandomOrderCost
{
    private readonly PlanTable table;
    private readonly Dictionary<ulong, double> costs = [];

    private RandomOrderCost(PlanTable table) => this.table = table;

    public static double Of(PlanTable table) => new RandomOrderCost(table).Cost(table.Weights, table.Start);

    private double Cost(double[] weights, StepsLeft left)
    {
        var total = PlanTable.Sum(weights);
        if (left.Repairs == 0) return total * table.HelpCost;
        if (costs.TryGetValue(left.Repairs, out var cost)) return cost;
        var count = 0;
        for (var bits = left.Repairs; bits != 0; count++)
        {
            var repair = table.Repairs[PlanTable.Take(ref bits)];
            double[] next = [.. weights];
            repair.Fail(next);
            cost += (total * table.Cost(repair, left.CoversOpen)) + Cost(next, left.Failed(repair));
        }

        return costs[left.Repairs] = cost / count;
    }
}
