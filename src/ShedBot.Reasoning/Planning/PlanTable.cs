using System.Numerics;

namespace ShedBot.Reasoning.Planning;

/// <summary>
/// A troubleshooting problem boiled down to numbers: hypotheses with weights, checks and repairs with what they do to them.
/// </summary>
/// <remarks>
/// Steps stand in the order in which ties are broken: less hazard, less cost, then id. Expected costs are worked out on weights that
/// need not add up to 1, and are then 'weight times minutes'; that saves dividing at each answer.
/// </remarks>
/// <param name="Single">True when every hypothesis is one fault, so that the order of answers and repairs does not matter to the weights.</param>
internal sealed record PlanTable(
    double[] Weights,
    PlanCheck[] Checks,
    PlanRepair[] Repairs,
    double[] CoverCosts,
    ulong[] CoverRepairs,
    double HelpCost,
    StepsLeft Start,
    bool Single)
{
    /// <summary>For each hypothesis the least it can cost to end the case by one who knows that it is so; see <see cref="LeastCosts"/>.</summary>
    public double[] Least { get; } = LeastCosts(Weights.Length, Repairs, HelpCost);

    public double Cost(PlanCheck check, ulong open) => check.Cost + Opening(check.Cover, open);

    public double Cost(PlanRepair repair, ulong open) => repair.Cost + Opening(repair.Cover, open);

    private double Opening(int cover, ulong open) => cover < 0 || ((open >> cover) & 1) != 0 ? 0 : CoverCosts[cover];

    /// <summary>A lower bound on the cost of any course of steps, times the weight: nobody does better than one who knows what is wrong.</summary>
    public double LowerBound(ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var h = 0; h < weights.Length; h++) sum += weights[h] * Least[h];
        return sum;
    }

    public static double Sum(ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        foreach (var weight in weights) sum += weight;
        return sum;
    }

    /// <summary>The lowest index in a bit set, taken out of it.</summary>
    public static int Take(ref ulong bits)
    {
        var at = BitOperations.TrailingZeroCount(bits);
        bits &= bits - 1;
        return at;
    }

    /// <summary>
    /// min(help, cost / P(something changes)) over the repairs that touch the hypothesis. Whatever else is done, the case ends by help, or the set
    /// is first changed by one of these, and tries at C with chance s cost at least C / s a change.
    /// </summary>
    private static double[] LeastCosts(int hypotheses, PlanRepair[] repairs, double help)
    {
        var least = new double[hypotheses];
        Array.Fill(least, help);
        foreach (var repair in repairs)
        {
            foreach (var effect in repair.Effects)
                least[effect.Hypothesis] = Math.Min(least[effect.Hypothesis], repair.Cost / (1 - effect.Stay));
        }

        return least;
    }
}
