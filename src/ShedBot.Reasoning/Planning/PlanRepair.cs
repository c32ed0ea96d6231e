using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>A repair as the planner sees it: how it moves the weight of the hypotheses it touches.</summary>
/// <param name="Index">Its place among the table's repairs, 0 to 63.</param>
/// <param name="Cover">The place of its cover in the table, or -1.</param>
/// <param name="Effects">For each hypothesis it touches, smaller sets before larger ones, so that weight that moves down is not moved twice.</param>
internal sealed record PlanRepair(int Index, string Id, double Cost, int Cover, Hazard Hazard, RepairEffect[] Effects)
{
    public ulong Bit { get; } = 1UL << Index;

    public ulong CoverBit { get; } = Cover < 0 ? 0 : 1UL << Cover;

    /// <summary>The repairs whose credit changes when this one has failed.</summary>
    public ulong Rivals { get; set; }

    /// <summary>The weight it can count as its own: all it mends of single faults, its share of sets of several.</summary>
    public double Credit(ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        foreach (var effect in Effects) sum += weights[effect.Hypothesis] * effect.Credit;
        return sum;
    }

    /// <summary>Takes the repair to have been done and the trouble not to be gone: w_f becomes w_f (1 - s_rf), and half-mended sets become smaller ones.</summary>
    /// <returns>The weight that was mended.</returns>
    public double Fail(Span<double> weights)
    {
        var solved = 0.0;
        foreach (var effect in Effects)
        {
            var weight = weights[effect.Hypothesis];
            if (weight <= 0) continue;
            weights[effect.Hypothesis] = weight * effect.Stay;
            solved += weight * effect.Solve;
            if (effect.Moves is null) continue;
            foreach (var (to, chance) in effect.Moves) weights[to] += weight * chance;
        }

        return solved;
    }
}

/// <summary>What one repair does to one hypothesis.</summary>
/// <param name="Stay">P(nothing of the set is mended).</param>
/// <param name="Solve">P(all of the set is mended).</param>
/// <param name="Credit">The share of the set's weight that counts for this repair in the order of repairs.</param>
/// <param name="Moves">The smaller sets that may be left, with their chances; null when there are none.</param>
internal readonly record struct RepairEffect(int Hypothesis, double Stay, double Solve, double Credit, (int To, double Chance)[]? Moves);
