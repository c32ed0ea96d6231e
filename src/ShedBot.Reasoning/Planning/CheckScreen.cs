using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>Picks the checks that are worth a deeper look: the best by the expected cost of the check followed by repairs only.</summary>
internal static class CheckScreen
{
    public static (Check Check, double[][] Chances)[] Best(
        PlanTable table, CostWeights weights, (Check Check, double[][] Chances)[] checks, int most)
    {
        if (checks.Length <= most) return checks;
        var plan = new RepairsPlan(table);
        var repairsOnly = plan.Value(table.Weights, table.Start);
        var scratch = new double[table.Weights.Length];
        return [.. checks.OrderBy(c => Ties.Key(Score(c))).ThenBy(c => c.Check.Id, StringComparer.Ordinal).Take(most)];

        // What the opening of a cover costs is left out: the checks behind it share it, and one alone would never be picked.
        double Score((Check Check, double[][] Chances) candidate)
        {
            var cost = weights.Total(candidate.Check.Cost) + (candidate.Check.Unsure * repairsOnly);
            foreach (var row in candidate.Chances)
            {
                LookAhead.Multiply(table.Weights, row, scratch);
                cost += (1 - candidate.Check.Unsure) * plan.Value(scratch, table.Start);
            }

            return cost;
        }
    }
}
