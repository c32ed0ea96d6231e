using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Benchmarks.Deciding;

/// <summary>The belief by the definition: weigh every set of faults but the empty one, and add up.</summary>
internal static class PlainSum
{
    public static double[] Marginals(DiagnosticModel model, ImmutableArray<Evidence> evidence)
    {
        var told = evidence.Cast<FindingTold>().Select(t => (
            Chances: new StateChances(model, model.FindingAt(t.Finding)),
            Lambda: Lambda(model, t))).ToList();
        var marginals = new double[model.Faults.Length];
        var total = 0.0;
        for (var set = 1; set < 1 << model.Faults.Length; set++)
        {
            int[] faults = [.. Enumerable.Range(0, model.Faults.Length).Where(f => (set >> f & 1) == 1)];
            var weight = faults.Aggregate(1.0, (w, f) => w * model.Faults[f].Prior / (1 - model.Faults[f].Prior));
            foreach (var (chances, lambda) in told) weight *= chances.Given(faults).Select((p, v) => p * lambda[v]).Sum();
            total += weight;
            foreach (var fault in faults) marginals[fault] += weight;
        }

        return [.. marginals.Select(m => m / total)];
    }

    private static double[] Lambda(DiagnosticModel model, FindingTold told)
    {
        var finding = model.Findings[model.FindingAt(told.Finding)];
        return AnswerChance.Column(told.Error, finding.States.Length, finding.States.IndexOf(told.State));
    }
}
