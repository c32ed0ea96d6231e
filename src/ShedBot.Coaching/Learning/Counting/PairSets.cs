namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Every single fault and every pair of faults that a machine may come with, in a fixed order; -1 stands for no second fault.</summary>
internal sealed class PairSets
{
    public PairSets(int faults)
    {
        var all = new List<(int, int)>();
        for (var one = 0; one < faults; one++)
        {
            all.Add((one, -1));
            for (var other = one + 1; other < faults; other++) all.Add((one, other));
        }

        All = [.. all];
    }

    public (int One, int Other)[] All { get; }
}

/// <summary>Weights of the sets that matter, each a likelihood without any prior in it.</summary>
internal sealed record SparseWeights(int[] Sets, double[] Weights);
