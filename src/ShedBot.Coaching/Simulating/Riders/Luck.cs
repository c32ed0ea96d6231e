namespace ShedBot.Coaching.Simulating.Riders;

/// <summary>
/// Chance that can be looked up: the same seed, rider and happening always come out the same, in whatever order they are asked for. So a run can be
/// repeated, riders can be worked out side by side, and the same repair on the same bike ends the same way whoever proposed it.
/// </summary>
/// <param name="Seed">Of the whole run.</param>
/// <param name="Rider">The number of the rider, from 0.</param>
/// <param name="Draw">How often this rider was drawn anew, from 0.</param>
public readonly record struct Luck(int Seed, int Rider, int Draw = 0)
{
    /// <param name="happening">What is rolled for.</param>
    /// <param name="time">Which time it happens, from 0.</param>
    /// <returns>Uniform in [0, 1), in steps of 2^-53.</returns>
    /// <remarks>FNV-1a over the characters, then the finaliser of SplitMix64 (Steele, Lea and Flood 2014); both constants are the published ones.</remarks>
    public double Roll(string happening, int time = 0)
    {
        var hash = Mix(Mix(Mix(Mix(14695981039346656037UL, (uint)Seed), (uint)Rider), (uint)Draw), (uint)time);
        foreach (var letter in happening) hash = (hash ^ letter) * 1099511628211UL;
        return (Finish(hash) >> 11) * (1.0 / (1UL << 53));
    }

    public bool Happens(double chance, string happening, int time = 0) => Roll(happening, time) < chance;

    /// <summary>One index, with a chance in proportion to its weight.</summary>
    /// <param name="weights">0 or more, not all 0.</param>
    public int Pick(IReadOnlyList<double> weights, string happening, int time = 0)
    {
        var left = Roll(happening, time) * weights.Sum();
        var last = 0;
        for (var i = 0; i < weights.Count; i++)
        {
            if (weights[i] <= 0) continue;
            last = i;
            left -= weights[i];
            if (left < 0) break;
        }

        return last;
    }

    /// <summary>One of so many, all alike.</summary>
    public int PickOf(int count, string happening, int time = 0) => (int)(Roll(happening, time) * count);

    private static ulong Mix(ulong hash, uint part) => Finish(hash ^ (part + 0x9E3779B97F4A7C15UL));

    private static ulong Finish(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
        return x ^ (x >> 31);
    }
}
