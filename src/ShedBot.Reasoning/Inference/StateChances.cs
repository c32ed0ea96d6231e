using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>P(state of one finding | exactly these faults are present), by the competing hazards of <see cref="Finding"/>.</summary>
/// <remarks>
/// <para>A cause that is sure (strengths that add up to 1) has an infinite hazard. It is kept as a finite number so large that every other
/// hazard is lost beside it in double precision, which gives the limit: sure causes share the states between them, the others add nothing.</para>
/// <para>Error: a few units in the last place. Safe for use by several threads.</para>
/// </remarks>
public sealed class StateChances
{
    private const double SureHazard = 1e300;

    private readonly double[][] hazards;
    private readonly double[] leakHazards;
    private readonly double[] quiet;

    /// <summary>Prepares the finding for quick use.</summary>
    /// <param name="model">The model that holds it.</param>
    /// <param name="finding">Its index.</param>
    public StateChances(DiagnosticModel model, int finding)
    {
        var made = model.Findings[finding];
        States = made.States.Length;
        leakHazards = Hazards(made.Leak.AsSpan(), out var leakQuiet);
        QuietWithoutCause = leakQuiet;
        var none = new double[States];
        hazards = new double[model.Faults.Length][];
        quiet = new double[model.Faults.Length];
        Array.Fill(hazards, none);
        Array.Fill(quiet, 1);
        foreach (var link in made.Links)
        {
            var fault = model.FaultAt(link.Fault);
            hazards[fault] = Hazards(link.Net.AsSpan(), out quiet[fault]);
        }
    }

    /// <summary>How many states the finding has; state 0 is the normal one.</summary>
    public int States { get; }

    /// <summary>P(normal | no fault), in (0, 1]: the leak stays quiet.</summary>
    internal double QuietWithoutCause { get; }

    /// <summary>What the presence of the fault multiplies P(normal) with, in [0, 1]; 1 without a link.</summary>
    internal double Quiet(int fault) => quiet[fault];

    /// <summary>The same for all of them.</summary>
    internal ReadOnlySpan<double> Quiets => quiet;

    internal ReadOnlySpan<double> HazardsOf(int fault) => hazards[fault];

    internal ReadOnlySpan<double> LeakHazards => leakHazards;

    /// <summary>P(each state | exactly these faults), aligned with the finding's states; adds up to 1.</summary>
    /// <param name="faults">Indices into the model's faults, each once; empty for no fault at all.</param>
    public double[] Given(ReadOnlySpan<int> faults)
    {
        var normal = QuietWithoutCause;
        var chances = (double[])leakHazards.Clone();
        foreach (var fault in faults)
        {
            normal *= quiet[fault];
            for (var state = 1; state < States; state++) chances[state] += hazards[fault][state];
        }

        var total = 0.0;
        for (var state = 1; state < States; state++) total += chances[state];
        var scale = total > 0 ? (1 - normal) / total : 0;
        for (var state = 1; state < States; state++) chances[state] *= scale;
        chances[0] = normal;
        return chances;
    }

    private static double[] Hazards(ReadOnlySpan<double> strengths, out double quiet)
    {
        var sum = 0.0;
        foreach (var strength in strengths[1..]) sum += strength;
        quiet = Math.Max(0, 1 - sum);
        var hazards = new double[strengths.Length];
        if (sum == 0) return hazards;
        var hazard = quiet > 0 ? -double.LogP1(-sum) : SureHazard;
        for (var state = 1; state < strengths.Length; state++) hazards[state] = hazard * (strengths[state] / sum);
        return hazards;
    }
}
