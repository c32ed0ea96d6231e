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

    /// <summary>By set: the product of the odds of its faults.</summary>
    public double[] Priors(double[] odds) => [.. All.Select(s => odds[s.One] * (s.Other < 0 ? 1 : odds[s.Other]))];
}

/// <summary>What something that was said makes of the sets of faults that matter to it.</summary>
/// <param name="One">By set: its first fault.</param>
/// <param name="Other">By set: its second one, or -1.</param>
/// <param name="Weights">By set: P(what was said, these faults) before anything is learnt, up to a factor.</param>
internal sealed record WeighedSets(int[] One, int[] Other, double[] Weights)
{
    /// <summary>The sum of all weights when the odds of each fault are multiplied so.</summary>
    public double Sum(double[] times)
    {
        var sum = 0.0;
        for (var i = 0; i < Weights.Length; i++) sum += Weight(i, times);
        return sum;
    }

    /// <summary>Adds to each fault its chance, times a share.</summary>
    public void AddChances(double[] sum, double[] times, double share)
    {
        var (total, weights) = (0.0, new double[times.Length]);
        for (var i = 0; i < Weights.Length; i++)
        {
            var weight = Weight(i, times);
            total += weight;
            weights[One[i]] += weight;
            if (Other[i] >= 0) weights[Other[i]] += weight;
        }

        if (total <= 0) return;
        for (var fault = 0; fault < weights.Length; fault++) sum[fault] += weights[fault] * share / total;
    }

    /// <summary>By fault: its chance.</summary>
    public double[] Chances(double[] times)
    {
        var chances = new double[times.Length];
        AddChances(chances, times, 1);
        return chances;
    }

    private double Weight(int i, double[] times) => Weights[i] * times[One[i]] * (Other[i] < 0 ? 1 : times[Other[i]]);
}
