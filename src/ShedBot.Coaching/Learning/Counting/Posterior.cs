namespace ShedBot.Coaching.Learning.Counting;

/// <summary>The conjugate prior of counts: Dirichlet, and for two ways Beta.</summary>
internal static class Posterior
{
    /// <summary>(a p_v + n_v) / (a + N) for each way v: the mean of the chances after the counts.</summary>
    /// <param name="prior">By way, adding up to 1.</param>
    /// <param name="sampleSize">Above 0: how many cases the prior counts for.</param>
    /// <param name="counts">By way, 0 or more; need not be whole.</param>
    public static double[] Mean(double[] prior, double sampleSize, double[] counts)
    {
        var all = sampleSize + counts.Sum();
        return [.. prior.Select((p, way) => ((sampleSize * p) + counts[way]) / all)];
    }
}
