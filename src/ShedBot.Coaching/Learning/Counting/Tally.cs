namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Counts of one thing that can come out in several ways, by member, so that any one of them can be left out.</summary>
/// <param name="ways">How many ways.</param>
internal sealed class Tally(int ways) : Bearing
{
    private readonly SortedDictionary<int, double[]> byMember = [];

    /// <summary>By way, over all members.</summary>
    public double[] Sum => SumWithout(null);

    public void Add(int member, int way, double weight)
    {
        if (!byMember.TryGetValue(member, out var counts)) byMember[member] = counts = new double[ways];
        counts[way] += weight;
    }

    /// <summary>
    /// The mean of the chances after the counts, each way counted on top of its prior chance times the sample size (Dirichlet, for two ways Beta); held
    /// to what is left of the move when the member who moves it most is left out.
    /// </summary>
    /// <param name="prior">By way, adding up to 1.</param>
    public double Mean(int way, double[] prior, double sampleSize)
    {
        var mean = Posterior.Mean(prior, sampleSize, Sum)[way];
        foreach (var member in byMember.Keys)
        {
            var without = Posterior.Mean(prior, sampleSize, SumWithout(member))[way];
            mean = mean > prior[way] ? Math.Max(prior[way], Math.Min(mean, without)) : Math.Min(prior[way], Math.Max(mean, without));
        }

        return mean;
    }

    private double[] SumWithout(int? left)
    {
        var sum = new double[ways];
        foreach (var (member, counts) in byMember)
        {
            if (member == left) continue;
            for (var way = 0; way < ways; way++) sum[way] += counts[way];
        }

        return sum;
    }
}
