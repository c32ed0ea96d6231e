using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>What was learnt between two repairs: for each finding one weight a true state, and the repair that ended the stretch, if one did.</summary>
/// <param name="Weights">Finding index to lambda_t = product of P(said | true state t) over everything said about it, each in [0, 1].</param>
/// <param name="EndedBy">The repair that failed at the end; null in the last epoch, which is about the machine as it is now.</param>
internal sealed record Epoch(SortedDictionary<int, double[]> Weights, RepairFailed? EndedBy)
{
    /// <summary>Cuts the evidence at each failed repair; there is always a last epoch, maybe an empty one.</summary>
    public static List<Epoch> Split(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var epochs = new List<Epoch>();
        var stretch = new List<Evidence>();
        foreach (var item in evidence)
        {
            if (item is RepairFailed repair)
            {
                epochs.Add(new(Weigh(model, stretch), repair));
                stretch.Clear();
            }
            else
            {
                stretch.Add(item);
            }
        }

        epochs.Add(new(Weigh(model, stretch), null));
        return epochs;
    }

    private static SortedDictionary<int, double[]> Weigh(DiagnosticModel model, List<Evidence> stretch)
    {
        // Keyed by who says it, so that a second answer from the same source replaces the first.
        var hard = new SortedDictionary<(int Finding, int Check), double[]>();
        var hints = new List<(int Finding, double[] Weights)>();
        foreach (var item in stretch)
        {
            switch (item)
            {
                case CheckAnswered said:
                    var check = model.CheckAt(said.Check);
                    var seen = model.FindingAt(model.Checks[check].Finding);
                    hard[(seen, check)] = Column(model, seen, said.State, model.Checks[check].Error);
                    break;
                case FindingTold told:
                    var heard = model.FindingAt(told.Finding);
                    hard[(heard, -1)] = Column(model, heard, told.State, told.Error);
                    break;
                case FindingHinted hinted:
                    hints.Add((model.FindingAt(hinted.Finding), Share(model, hinted)));
                    break;
                default:
                    throw new ArgumentException($"Evidence of the kind {item.GetType().Name} is not known here.", nameof(stretch));
            }
        }

        var weights = new SortedDictionary<int, double[]>();
        foreach (var (key, column) in hard) Multiply(weights, key.Finding, column);
        var answered = weights.Keys.ToHashSet();
        foreach (var (finding, column) in hints)
        {
            if (!answered.Contains(finding)) Multiply(weights, finding, column);
        }

        return weights;
    }

    private static double[] Column(DiagnosticModel model, int finding, string state, AnswerError error) =>
        AnswerChance.Column(error, model.Findings[finding].States.Length, model.StateAt(finding, state));

    private static double[] Share(DiagnosticModel model, FindingHinted hinted)
    {
        var states = model.Findings[model.FindingAt(hinted.Finding)].States.Length;
        var sum = hinted.Weights.Sum();
        if (hinted.Weights.Length != states || hinted.Weights.Any(w => !(w >= 0)) || !(sum > 0 && double.IsFinite(sum)))
            throw new ArgumentException($"A hint on '{hinted.Finding}' needs {states} weights of 0 or more, not all 0.", nameof(hinted));
        return [.. hinted.Weights.Select(w => w / sum)];
    }

    private static void Multiply(SortedDictionary<int, double[]> weights, int finding, double[] column)
    {
        if (weights.TryGetValue(finding, out var known))
        {
            for (var state = 0; state < column.Length; state++) known[state] *= column[state];
        }
        else
        {
            weights.Add(finding, column);
        }
    }
}
