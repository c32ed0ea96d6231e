using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>How far any probability of the bounded sum can be from the unbounded one.</summary>
/// <remarks>
/// <para>Let Z be the sum of prior times likelihood over the sets that were looked at, R the same over the non-empty sets that were not. An event
/// with bounded probability a / Z has the unbounded one (a + r) / (Z + R), 0 &lt;= r &lt;= R. The difference is (Z r - a R) / (Z (Z + R)), which
/// lies between -R / (Z + R) and R / (Z + R).</para>
/// <para>R is at most the prior mass m of the sets left out, which gives the well-known bound m / Z. Here it is made tighter: each
/// finding's likelihood is capped by a product of factors (<see cref="LikelihoodCap"/>), the cap of each finding being chosen in turn for the
/// smallest R, the plain cap among them; so what is reported is a true bound and never above m / Z. A failed repair has a chance of at most 1.</para>
/// </remarks>
internal sealed class LeftOutBound
{
    private const int Sweeps = 2;

    private readonly double[] odds;
    private readonly List<List<LikelihoodCap>> caps = [];

    public LeftOutBound(DiagnosticModel model, double[] odds, List<Epoch> epochs)
    {
        this.odds = odds;
        var mayBeMended = new bool[odds.Length];
        foreach (var epoch in epochs)
        {
            foreach (var (finding, lambda) in epoch.Weights) caps.Add(LikelihoodCap.All(model.ChancesOf(finding), lambda, mayBeMended));
            if (epoch.EndedBy is not { } failed) continue;
            foreach (var fix in model.Repairs[model.RepairAt(failed.Repair)].Fixes) mayBeMended[model.FaultAt(fix.Fault)] = true;
        }
    }

    /// <param name="sets">The sets that were looked at.</param>
    /// <param name="logSeen">Natural logarithm of Z, in units of the prior chance of the empty set.</param>
    /// <returns>In [0, 1].</returns>
    public double Share(FaultSets sets, double logSeen)
    {
        var chosen = caps.Select(c => c[0]).ToArray();
        var factor = new double[odds.Length];
        var least = LogMissed(sets, chosen, factor);
        for (var turn = 0; turn < Sweeps * caps.Count; turn++)
        {
            var finding = turn % caps.Count;
            foreach (var cap in caps[finding])
            {
                var before = chosen[finding];
                chosen[finding] = cap;
                Add(factor, cap, before);
                var logMissed = LogMissed(sets, chosen, factor);
                if (logMissed < least)
                {
                    least = logMissed;
                }
                else
                {
                    chosen[finding] = before;
                    Add(factor, before, cap);
                }
            }
        }

        var missed = Math.Exp(least - logSeen);
        return double.IsFinite(missed) ? missed / (1 + missed) : 1;
    }

    private static void Add(double[] factor, LikelihoodCap more, LikelihoodCap less)
    {
        for (var fault = 0; fault < factor.Length; fault++) factor[fault] += more.Factor[fault] - less.Factor[fault];
    }

    /// <summary>ln of the capped R. Only sums of positive terms: nothing cancels.</summary>
    private double LogMissed(FaultSets sets, LikelihoodCap[] chosen, double[] factor)
    {
        var joining = Counts(sets.FaultByRank[..sets.Joining], sets.Largest + 1, factor);
        var alone = Counts(sets.FaultByRank[sets.Joining..], 2, factor);
        var missed = (joining[^1] * alone[0]) + ((joining.Sum() - joining[0]) * alone[1]) + (joining.Sum() * alone[2]);
        return Math.Log(missed) + chosen.Sum(c => c.Base);
    }

    /// <summary>Entry j: the sum of products of capped odds over sets of exactly j of these faults; the last entry: of that many or more.</summary>
    private double[] Counts(ReadOnlySpan<int> faults, int last, double[] factor)
    {
        var counts = new double[last + 1];
        counts[0] = 1;
        foreach (var fault in faults)
        {
            var weight = odds[fault] * Math.Exp(factor[fault]);
            counts[last] += (counts[last] + counts[last - 1]) * weight;
            for (var j = last - 1; j > 0; j--) counts[j] += counts[j - 1] * weight;
        }

        return counts;
    }
}
