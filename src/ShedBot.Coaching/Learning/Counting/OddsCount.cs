namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Finds by how much the odds of each fault must be multiplied so that the rules expect what was counted.</summary>
/// <remarks>
/// <para>Let t_f be the factors, w_i what case i counts for, a_i its share of the prior. The fixed point of
/// t_f = t_f * sum_i [w_i P_t(f | story i) + a_i P_1(f | opening i)] / sum_i (w_i + a_i) P_t(f | opening i)
/// is where the likelihood of the stories given their openings, times the prior, is largest; each step raises it (iterative scaling of Darroch and
/// Ratcliff 1972 inside the expectation step of Dempster, Laird and Rubin 1977, both from memory). With one complaint, one fault a machine and every
/// cause known it is P(f) = (n_f + a m_f) / (N + a).</para>
/// <para>Cases without a proved end count with what they tell up to there, which on its own moves nothing: were they left out, faults that are easily mended
/// would be counted too often. 'Something else' keeps its odds; the others are reckoned beside it.</para>
/// </remarks>
/// <param name="anchors">By case: what the rules' own word counts for beside it; see <see cref="CaseWeights.Anchors"/>.</param>
internal sealed class OddsCount(IReadOnlyList<WeighedCase> cases, double[] anchors, int faults)
{
    private const int MostSteps = 60;

    private const double Settled = 1e-3;

    /// <summary>Cases that begin alike are expected alike.</summary>
    private readonly List<(WeighedSets Opened, double Weight, double Anchor)> openings =
    [
        .. cases.Select((c, i) => (Case: c, Anchor: anchors[i])).GroupBy(c => c.Case.Opened, ReferenceEqualityComparer.Instance)
            .Select(g => ((WeighedSets)g.Key!, g.Sum(c => c.Case.Weight), g.Sum(c => c.Anchor))),
    ];

    /// <param name="free">By fault: whether its odds may move.</param>
    /// <param name="least">By fault: the least factor.</param>
    public double[] Fit(bool[] free, double[] least, double most)
    {
        var (times, anchored) = (Ones(faults), new double[faults]);
        foreach (var (opened, _, anchor) in openings) opened.AddChances(anchored, times, anchor);
        for (var step = 0; step < MostSteps; step++)
        {
            var (counted, expected) = (Counted(times), Expected(times, withAnchor: true));
            var moved = 0.0;
            for (var fault = 0; fault < faults; fault++)
            {
                if (!free[fault] || expected[fault] <= 0) continue;
                var next = Math.Clamp(times[fault] * (counted[fault] + anchored[fault]) / expected[fault], least[fault], most);
                moved = Math.Max(moved, Math.Abs(Math.Log(next / times[fault])));
                times[fault] = next;
            }

            if (moved < Settled) break;
        }

        return times;
    }

    /// <summary>By fault: in how many cases it was there, by their whole stories.</summary>
    public double[] Counted(double[] times)
    {
        var sum = new double[faults];
        foreach (var c in cases) c.Told.AddChances(sum, times, c.Weight);
        return sum;
    }

    /// <summary>By fault: in how many it is expected by their openings alone.</summary>
    /// <param name="withAnchor">True to count the cases that never were as well.</param>
    public double[] Expected(double[] times, bool withAnchor)
    {
        var sum = new double[faults];
        foreach (var (opened, weight, anchor) in openings) opened.AddChances(sum, times, weight + (withAnchor ? anchor : 0));
        return sum;
    }

    public static double[] Ones(int faults)
    {
        var ones = new double[faults];
        Array.Fill(ones, 1);
        return ones;
    }
}
