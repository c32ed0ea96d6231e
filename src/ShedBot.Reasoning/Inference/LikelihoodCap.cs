namespace ShedBot.Reasoning.Inference;

/// <summary>
/// An upper bound on the likelihood of what was said about one finding, in the form base * product of a factor a fault, so that it can be
/// summed over all sets without listing them.
/// </summary>
/// <remarks>
/// With x the summed hazard of the set and the leak, q = exp(-x), l the weight of the normal state and a the largest of an abnormal one, the
/// likelihood is at most L(x) = a + (l - a) q. For l &lt; a, ln L is concave in x and lies below each of its tangents (the variational bound
/// for noisy-OR nets of Jaakkola and Jordan 1999, from memory). For l &gt; a it is convex and lies below its chord over the range that x can take;
/// hazards may be cut short there, which only raises L.
/// </remarks>
/// <param name="Base">Natural logarithm of the base.</param>
/// <param name="Factor">Natural logarithm of each fault's factor, by index.</param>
internal sealed record LikelihoodCap(double Base, double[] Factor)
{
    private static readonly double[] Touching = [0.1, 0.25, 0.5, 1, 2, 4];

    /// <summary>The caps to choose from; the first is the plain one, the largest weight whatever the faults.</summary>
    /// <param name="mayBeMended">By fault: true where an earlier repair may have mended it, so that it may no longer speak against 'normal'.</param>
    public static List<LikelihoodCap> All(StateChances finding, double[] lambda, bool[] mayBeMended)
    {
        var (normal, abnormal) = (lambda[0], lambda[1..].Max());
        var faults = mayBeMended.Length;
        var hazards = new double[faults];
        for (var fault = 0; fault < faults; fault++) hazards[fault] = Sum(finding.HazardsOf(fault));
        var leak = Sum(finding.LeakHazards);
        List<LikelihoodCap> caps = [new(Math.Log(Math.Max(normal, abnormal)), new double[faults])];
        if (normal < abnormal)
        {
            caps.AddRange(Touching.Select(touch => Tangent(hazards, leak, normal, abnormal, leak + touch)));
        }
        else if (normal > abnormal)
        {
            for (var fault = 0; fault < faults; fault++) hazards[fault] = mayBeMended[fault] ? 0 : hazards[fault];
            caps.AddRange(abnormal == 0
                ? [new(Math.Log(normal) - leak, [.. hazards.Select(h => -h)])]
                : Touching.Select(longest => Chord([.. hazards.Select(h => Math.Min(h, longest))], leak, normal, abnormal)));
        }

        return caps;
    }

    private static LikelihoodCap Tangent(double[] hazards, double leak, double normal, double abnormal, double at)
    {
        var height = Height(at, normal, abnormal);
        var slope = (abnormal - normal) * Math.Exp(-at) / height;
        var start = Math.Log(height) + (slope * (leak - at));

        // No likelihood is above 'abnormal', so no single fault needs to lift the bound higher than that.
        return new(start, [.. hazards.Select(h => Math.Min(slope * h, Math.Log(abnormal) - start))]);
    }

    private static LikelihoodCap Chord(double[] hazards, double leak, double normal, double abnormal)
    {
        var (start, range) = (Math.Log(Height(leak, normal, abnormal)), hazards.Sum());
        var slope = range > 0 ? (Math.Log(Height(leak + range, normal, abnormal)) - start) / range : 0;
        return new(start, [.. hazards.Select(h => slope * h)]);
    }

    private static double Height(double hazard, double normal, double abnormal) => abnormal + ((normal - abnormal) * Math.Exp(-hazard));

    private static double Sum(ReadOnlySpan<double> hazards)
    {
        var sum = 0.0;
        foreach (var hazard in hazards) sum += hazard;
        return sum;
    }
}
