namespace ShedBot.Reasoning.Inference;

/// <summary>How far any probability of the bounded sum can be from the unbounded one.</summary>
/// <remarks>
/// Let Z be the sum of prior times likelihood over the sets that were looked at, R the same over the non-empty sets that were not. For any
/// event A with bounded probability a/Z and unbounded (a + r)/(Z + R), 0 &lt;= r &lt;= R, the difference is (Z r - a R) / (Z (Z + R)), which lies
/// between -R/(Z + R) and R/(Z + R). R itself is at most m * L: m the prior mass of the sets left out, L the largest likelihood any set
/// can have, the product over the findings of the largest weight of a true state. Reported is m L / (Z + m L), never above m / Z.
/// </remarks>
internal sealed class LeftOutBound(double[] odds, List<Epoch> epochs, Dictionary<int, StateChances> prepared)
{
    private readonly double logMost = epochs.SelectMany(e => e.Weights.Values).Sum(lambda => Math.Log(lambda.Max()));

    /// <param name="sets">The sets that were looked at.</param>
    /// <param name="logSeen">Natural logarithm of Z, in units of the prior chance of the empty set.</param>
    /// <returns>In [0, 1].</returns>
    public double Share(FaultSets sets, double logSeen)
    {
        _ = prepared;
        var missed = Missed(sets) * Math.Exp(logMost - logSeen);
        return double.IsFinite(missed) ? missed / (1 + missed) : 1;
    }

    /// <summary>The sum of the products of odds over every set of two or more that was not looked at. Only sums of positive terms: nothing cancels.</summary>
    private double Missed(FaultSets sets)
    {
        var joining = Counts(sets.FaultByRank[..sets.Joining], sets.Largest + 1);
        var alone = Counts(sets.FaultByRank[sets.Joining..], 2);
        return (joining[^1] * alone[0]) + ((joining.Sum() - joining[0]) * alone[1]) + (joining.Sum() * alone[2]);
    }

    /// <summary>Entry j: the sum of products of odds over sets of exactly j of these faults; the last entry: of that many or more.</summary>
    private double[] Counts(ReadOnlySpan<int> faults, int last)
    {
        var counts = new double[last + 1];
        counts[0] = 1;
        foreach (var fault in faults)
        {
            counts[last] += (counts[last] + counts[last - 1]) * odds[fault];
            for (var j = last - 1; j > 0; j--) counts[j] += counts[j - 1] * odds[fault];
        }

        return counts;
    }
}
