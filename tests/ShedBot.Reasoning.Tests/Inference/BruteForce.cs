using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>
/// The same sums the slow way: every set as a bit mask, every formula straight from its definition, nothing shared with the code under test but
/// the model types. For up to about twelve faults.
/// </summary>
/// <param name="Joint">By mask: P(set at the start has this many faults or fewer, all evidence, this set now). Mask 0 is empty of weight.</param>
/// <param name="Prior">The prior mass of the starting sets that were used.</param>
internal sealed record BruteForce(DiagnosticModel Model, double[] Joint, double Prior)
{
    public double LogEvidence => Math.Log(Joint.Sum() / Prior);

    public double Marginal(int fault) => Joint.Where((_, mask) => (mask >> fault & 1) == 1).Sum() / Joint.Sum();

    public static BruteForce Sum(DiagnosticModel model, IReadOnlyList<Evidence> evidence, int largest)
    {
        var n = model.Faults.Length;
        var joint = new double[1 << n];
        for (var mask = 1; mask < joint.Length; mask++)
        {
            if (int.PopCount(mask) > largest) continue;
            joint[mask] = 1;
            for (var f = 0; f < n; f++) joint[mask] *= (mask >> f & 1) == 1 ? model.Faults[f].Prior : 1 - model.Faults[f].Prior;
        }

        var prior = joint.Sum();
        var stretch = new List<Evidence>();
        foreach (var item in evidence)
        {
            if (item is RepairFailed failed)
            {
                Learn(model, joint, stretch);
                stretch.Clear();
                joint = Mend(model, joint, failed);
            }
            else
            {
                stretch.Add(item);
            }
        }

        Learn(model, joint, stretch);
        return new(model, joint, prior);
    }

    /// <summary>P(v | set): the hazard form written out.</summary>
    public static double[] States(DiagnosticModel model, Finding finding, int mask)
    {
        var hazards = Hazards(finding.Leak);
        foreach (var link in finding.Links)
        {
            if ((mask >> model.FaultAt(link.Fault) & 1) == 0) continue;
            var more = Hazards(link.Net);
            for (var v = 1; v < hazards.Length; v++) hazards[v] += more[v];
        }

        var total = hazards.Sum();
        return [Math.Exp(-total), .. hazards[1..].Select(h => total > 0 ? (1 - Math.Exp(-total)) * h / total : 0)];

        static double[] Hazards(IReadOnlyList<double> strengths)
        {
            var sum = strengths.Skip(1).Sum();
            return [0, .. strengths.Skip(1).Select(s => sum > 0 ? -Math.Log(1 - sum) * s / sum : 0)];
        }
    }

    private static void Learn(DiagnosticModel model, double[] joint, List<Evidence> stretch)
    {
        foreach (var finding in model.Findings)
        {
            var said = Enumerable.Range(0, finding.States.Length).Select(truth => Said(model, finding, truth, stretch)).ToArray();
            if (said.All(s => s == 1)) continue;
            for (var mask = 1; mask < joint.Length; mask++)
            {
                var (truths, likelihood) = (States(model, finding, mask), 0.0);
                for (var truth = 0; truth < truths.Length; truth++) likelihood += truths[truth] * said[truth];
                joint[mask] *= likelihood;
            }
        }
    }

    private static double Said(DiagnosticModel model, Finding finding, int truth, List<Evidence> stretch)
    {
        var product = 1.0;
        foreach (var item in stretch)
        {
            product *= item switch
            {
                CheckAnswered a when model.Checks.Single(c => c.Id == a.Check) is var check && check.Finding == finding.Id => Chance(check.Error, a.State),
                FindingTold t when t.Finding == finding.Id => Chance(t.Error, t.State),
                FindingHinted h when h.Finding == finding.Id => h.Weights[truth] / h.Weights.Sum(),
                _ => 1,
            };
        }

        return product;

        double Chance(AnswerError error, string state)
        {
            var wrong = truth == 0 ? error.FalsePositive : error.FalseNegative;
            return finding.States[truth] == state ? 1 - wrong : wrong / (finding.States.Length - 1);
        }
    }

    private static double[] Mend(DiagnosticModel model, double[] joint, RepairFailed failed)
    {
        var repair = model.Repairs.Single(r => r.Id == failed.Repair);
        var after = new double[joint.Length];
        for (var from = 1; from < joint.Length; from++)
        {
            for (var to = from; to > 0; to = (to - 1) & from)
            {
                var chance = from == to && failed.Better ? Inferrer.Eased : 1;
                for (var f = 0; f < model.Faults.Length; f++)
                {
                    if ((from >> f & 1) == 0) continue;
                    var success = repair.Fixes.SingleOrDefault(x => x.Fault == model.Faults[f].Id)?.Success ?? 0;
                    chance *= (to >> f & 1) == 1 ? 1 - success : success;
                }

                after[to] += joint[from] * chance;
            }
        }

        return after;
    }
}
