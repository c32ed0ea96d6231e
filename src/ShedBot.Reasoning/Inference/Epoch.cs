using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>What was learnt between two repairs: for each finding one weight a true state, and the repair that ended the stretch, if one did.</summary>
/// <param name="Weights">Finding index to lambda_t = product of P(said | true state t) over everything said about it, each in [0, 1].</param>
/// <param name="EndedBy">The repair that failed at the end; null in the last epoch, which is about the machine as it is now.</param>
internal sealed record Epoch(SortedDictionary<int, double[]> Weights, RepairFailed? EndedBy)
{
    /// <summary>Cuts the evidence at each failed repair; there is always a last epoch, maybe an empty one.</summary>
    /// <param name="counts">True for each piece that counts; a repair that does not count still ends its epoch, but mends nothing and tells nothing.</param>
    public static List<Epoch> Split(DiagnosticModel model, IReadOnlyList<Evidence> evidence, bool[] counts)
    {
        var epochs = new List<Epoch>();
        var weights = new SortedDictionary<int, double[]>();
        for (var at = 0; at < evidence.Count; at++)
        {
            if (evidence[at] is RepairFailed repair)
            {
                epochs.Add(new(weights, counts[at] ? repair : null));
                weights = [];
            }
            else if (counts[at])
            {
                var (finding, column) = Read(model, evidence[at]);
                if (!weights.TryGetValue(finding, out var known)) weights.Add(finding, column);
                else for (var state = 0; state < column.Length; state++) known[state] *= column[state];
            }
        }

        epochs.Add(new(weights, null));
        return epochs;
    }

    private static (int Finding, double[] Column) Read(DiagnosticModel model, Evidence item)
    {
        switch (item)
        {
            case CheckAnswered answered:
                var check = model.Checks[model.CheckAt(answered.Check)];
                return Said(model, model.FindingAt(check.Finding), answered.State, check.Error);
            case FindingTold told:
                return Said(model, model.FindingAt(told.Finding), told.State, told.Error);
            case FindingHinted hinted:
                var finding = model.FindingAt(hinted.Finding);
                var (states, sum) = (model.Findings[finding].States.Length, hinted.Weights.Sum());
                if (hinted.Weights.Length != states || hinted.Weights.Any(w => !(w >= 0)) || !(sum > 0 && double.IsFinite(sum)))
                    throw new ArgumentException($"A hint on '{hinted.Finding}' needs {states} weights of 0 or more, not all 0.", nameof(item));
                return (finding, [.. hinted.Weights.Select(w => w / sum)]);
            default:
                throw new ArgumentException($"Evidence of the kind {item.GetType().Name} says nothing of a finding.", nameof(item));
        }
    }

    private static (int Finding, double[] Column) Said(DiagnosticModel model, int finding, string state, AnswerError error) =>
        (finding, AnswerChance.Column(error, model.Findings[finding].States.Length, model.StateAt(finding, state)));
}
