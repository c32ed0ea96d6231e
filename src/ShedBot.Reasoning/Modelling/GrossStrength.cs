using System.Collections.Immutable;

namespace ShedBot.Reasoning.Modelling;

/// <summary>
/// From what a mechanic can answer, 'if only this is wrong, how often do you see it?' (gross, leak inside; Henrion 1989), to what the sums
/// need, the cause alone (net, leak excluded; Diez 1993).
/// </summary>
public static class GrossStrength
{
    /// <summary>The net strengths for which P(state | only this fault) is exactly the gross one.</summary>
    /// <remarks>
    /// With one abnormal state: net = (gross - leak) / (1 - leak). With several the conversion is made on the hazards of
    /// <see cref="Finding"/>. A gross strength of 0 means that the fault adds nothing to that state beyond the leak.
    /// Error: about 1e-14.
    /// </remarks>
    /// <param name="gross">Aligned with the finding's states; the normal entry is ignored. Each in [0, 1], sum at most 1.</param>
    /// <param name="leak">P(state | no fault), aligned likewise. Each in [0, 1), sum below 1.</param>
    /// <returns>Aligned likewise; the normal entry makes the sum 1.</returns>
    /// <exception cref="ArgumentException">A number is out of range, or a gross strength is below what the leak alone gives.</exception>
    public static ImmutableArray<double> ToNet(ReadOnlySpan<double> gross, ReadOnlySpan<double> leak)
    {
        if (gross.Length != leak.Length || gross.Length < 2)
            throw new ArgumentException($"There are {gross.Length} gross strengths and {leak.Length} leaks; both need one a state, two or more.", nameof(gross));
        var (stated, leaked) = (Sum(gross, "gross strength"), Sum(leak, "leak"));
        if (stated > 1 + 1e-12 || leaked >= 1)
            throw new ArgumentException($"Gross strengths add up to {stated} (at most 1), leaks to {leaked} (below 1).", nameof(gross));
        if (stated >= 1) return [0, .. gross[1..]];

        // The leak's hazards, split by whether the fault says anything about the state.
        var leakHazard = leaked > 0 ? -double.LogP1(-leaked) / leaked : 0;
        var unstated = 0.0;
        for (var state = 1; state < gross.Length; state++) unstated += gross[state] == 0 ? leak[state] * leakHazard : 0;
        var hazard = stated > 0 ? TotalHazard(stated, unstated) : unstated;
        var added = new double[gross.Length];
        for (var state = 1; state < gross.Length; state++)
        {
            if (gross[state] == 0) continue;
            added[state] = ((hazard - unstated) * gross[state] / stated) - (leak[state] * leakHazard);
            if (added[state] < -1e-12)
            {
                throw new ArgumentException(
                    $"State {state} is given {gross[state]} when this is the only fault, less than the leak of {leak[state]} gives without any fault.", nameof(gross));
            }

            added[state] = Math.Max(0, added[state]);
        }

        var total = added.Sum();
        var net = -double.ExpM1(-total);
        return [1 - net, .. added[1..].Select(h => total > 0 ? net * h / total : 0)];
    }

    /// <summary>The hazard H with (1 - exp(-H)) (H - unstated) / H = stated; the left side grows with H from 0 to 1.</summary>
    private static double TotalHazard(double stated, double unstated)
    {
        if (unstated == 0) return -double.LogP1(-stated);
        double low = unstated, high = Math.Max(1, 2 * unstated);
        while (-double.ExpM1(-high) * (high - unstated) / high < stated && high < 1e18) high *= 2;
        for (var middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2)
        {
            if (-double.ExpM1(-middle) * (middle - unstated) / middle < stated) low = middle;
            else high = middle;
        }

        return high;
    }

    private static double Sum(ReadOnlySpan<double> values, string what)
    {
        var sum = 0.0;
        foreach (var value in values[1..])
        {
            if (value is not (>= 0 and <= 1)) throw new ArgumentException($"A {what} of {value} is not a probability.", nameof(values));
            sum += value;
        }

        return sum;
    }
}
