namespace ShedBot.Knowledge.Compiling;

/// <summary>Turns "if only this is wrong, how often do you see it?" into what the cause adds by itself.</summary>
/// <remarks>
/// <para>For one abnormal state this is Henrion's gross and Diez's net form of the leaky noisy-OR: s = (p - leak) / (1 - leak).</para>
/// <para>For several states the causes compete by hazards, as the finding of the reasoning defines: with the total hazard H,
/// P(v | only this) = (1 - exp(-H)) h_v / H. The states that the rule lists must come out at their gross chance g_v; a state that it does
/// not list keeps its leak hazard u_v. So with G the sum of the g_v and U the sum of the u_v, H solves (1 - exp(-H)) (1 - U / H) = G, whose
/// left side grows with H, and h_v = g_v H / (1 - exp(-H)). What the leak brings is then taken off.</para>
/// </remarks>
internal static class GrossLink
{
    /// <summary>Above this the chances of the states of one finding are not sharpened any further: a sum of 1 would need an endless hazard.</summary>
    public const double MaxSum = 0.99;

    /// <param name="gross">Aligned with the states; null for a state that is not listed; the normal entry is ignored. The listed ones sum to at most <see cref="MaxSum"/>.</param>
    /// <param name="leak">Aligned with the states; the normal entry is ignored.</param>
    /// <returns>The net strengths, aligned with the states, 0 for the normal one. A listed state that the leak alone shows as often gets 0.</returns>
    public static double[] ToNet(IReadOnlyList<double?> gross, IReadOnlyList<double> leak)
    {
        var leakHazard = LeakHazards(leak);
        double listed = 0, unlisted = 0;
        for (var v = 1; v < gross.Count; v++)
        {
            if (gross[v] is { } g) listed += g;
            else unlisted += leakHazard[v];
        }

        var total = TotalHazard(listed, unlisted);
        var chance = -Math.Exp(-total) + 1;
        var added = new double[gross.Count];
        var sum = 0.0;
        for (var v = 1; v < gross.Count; v++)
        {
            if (gross[v] is not { } g || chance <= 0) continue;
            added[v] = Math.Max(0, (g * total / chance) - leakHazard[v]);
            sum += added[v];
        }

        var strength = 1 - Math.Exp(-sum);
        for (var v = 1; v < added.Length; v++) added[v] = sum > 0 ? strength * added[v] / sum : 0;
        return added;
    }

    private static double[] LeakHazards(IReadOnlyList<double> leak)
    {
        var sum = leak.Skip(1).Sum();
        var hazard = -Math.Log(1 - sum);
        return [.. leak.Select((l, v) => v == 0 || sum <= 0 ? 0 : hazard * l / sum)];
    }

    private static double TotalHazard(double listed, double unlisted)
    {
        if (unlisted <= 0) return -Math.Log(1 - listed);
        double low = unlisted, high = unlisted + 1;
        while (Chance(high) < listed) high *= 2;
        for (var i = 0; i < 200 && low < high; i++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high) break;
            if (Chance(middle) < listed) low = middle;
            else high = middle;
        }

        return high;

        double Chance(double hazard) => (1 - Math.Exp(-hazard)) * (1 - (unlisted / hazard));
    }
}
