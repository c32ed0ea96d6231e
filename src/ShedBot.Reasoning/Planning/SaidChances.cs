using System.Collections.Immutable;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>P(said state | exactly these faults), straight from the model: the competing-causes form of <see cref="Finding"/>, then the answer error.</summary>
internal static class SaidChances
{
    /// <returns>One entry a state; adds up to 1.</returns>
    public static double[] Of(DiagnosticModel model, Check check, ReadOnlySpan<int> faults)
    {
        var finding = model.Findings[model.FindingAt(check.Finding)];
        var hazards = new double[finding.States.Length];
        Add(finding.Leak, hazards);
        foreach (var fault in faults)
        {
            foreach (var link in finding.Links)
            {
                if (link.Fault == model.Faults[fault].Id) Add(link.Net, hazards);
            }
        }

        return WithError(FromHazards(hazards), check.Error);
    }

    private static void Add(ImmutableArray<double> strengths, double[] hazards)
    {
        var strength = 0.0;
        for (var v = 1; v < hazards.Length; v++) strength += strengths[v];
        if (strength <= 0) return;
        // A cause that never fails would be an endless hazard, and its states could not be shared; the cap is beyond the precision of a chance.
        var hazard = strength < 1 ? Math.Min(-Math.Log(1 - strength), 60) : 60;
        for (var v = 1; v < hazards.Length; v++) hazards[v] += hazard * strengths[v] / strength;
    }

    private static double[] FromHazards(double[] hazards)
    {
        var total = hazards.Sum();
        if (total <= 0)
        {
            hazards[0] = 1;
            return hazards;
        }

        var abnormal = -Math.Exp(-total) + 1;
        for (var v = 1; v < hazards.Length; v++) hazards[v] *= abnormal / total;
        hazards[0] = Math.Exp(-total);
        return hazards;
    }

    private static double[] WithError(double[] truly, AnswerError error)
    {
        var abnormal = truly.Length - 1;
        var said = new double[truly.Length];
        for (var v = 0; v < said.Length; v++)
        {
            var others = (1 - truly[0] - (v == 0 ? 0 : truly[v])) * error.FalseNegative / abnormal;
            said[v] = v == 0
                ? (truly[0] * (1 - error.FalsePositive)) + others
                : (truly[v] * (1 - error.FalseNegative)) + (truly[0] * error.FalsePositive / abnormal) + others;
        }

        return said;
    }
}
