namespace ShedBot.Coaching.Learning.Proving;

/// <summary>How much better learnt numbers foretold cases of members they were not learnt from than the rules did.</summary>
/// <param name="ByMember">What each member's cases gained, in natural logarithms of a likelihood ratio; 0 where nothing of theirs was touched.</param>
/// <param name="ByFold">The same for each part of the cases.</param>
internal sealed record Proof(double[] ByMember, double[] ByFold)
{
    public double Sum => ByMember.Sum();

    /// <summary>The standard error of the sum, members being drawn at random. When one member alone gains or loses it is as large as what they do.</summary>
    public double Error
    {
        get
        {
            var (n, mean) = (ByMember.Length, ByMember.Average());
            return n < 2 ? double.PositiveInfinity : Math.Sqrt(n / (n - 1.0) * ByMember.Sum(g => (g - mean) * (g - mean)));
        }
    }

    /// <summary>
    /// How many times likelier the cases kept aside were with what was learnt from the others: the likelihood ratio of each part, on the mean over the parts.
    /// If the rules are right it comes to k or more at most once in k clubs, however few the cases and whatever was learnt: each part's ratio is 1 on the mean
    /// (Markov's inequality; the 'cross-fit' test of Wasserman, Ramdas and Balakrishnan, Universal inference, 2020, from memory). Cases that
    /// count for less than one only make it less.
    /// </summary>
    public double LogTimesLikelier
    {
        get
        {
            var most = ByFold.Max();
            return most + Math.Log(ByFold.Average(g => Math.Exp(g - most)));
        }
    }

    /// <summary>Of so many members the cases were foretold better, and of so many worse.</summary>
    public int Better => ByMember.Count(g => g > 0);

    public int Worse => ByMember.Count(g => g < 0);

    /// <summary>The gain is so many standard errors above 0, or more.</summary>
    public bool IsAbove(double errors) => Sum > 0 && Sum > errors * Error * (1 + Rounding);

    private const double Rounding = 1e-9;
}
