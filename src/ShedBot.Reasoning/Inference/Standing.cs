using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Inference;

/// <summary>Which pieces of evidence count: not an answer that was replaced by a later one, not a hint on what was then answered.</summary>
internal static class Standing
{
    /// <summary>True for each piece that counts. What lies before a failed repair is about another machine, and replaces nothing after it.</summary>
    public static bool[] Of(DiagnosticModel model, IReadOnlyList<Evidence> evidence)
    {
        var counts = new bool[evidence.Count];
        var sources = new HashSet<(int Finding, int Check)>();
        var hard = new HashSet<int>();
        var hints = new List<(int At, int Finding)>();
        for (var at = evidence.Count - 1; at >= 0; at--)
        {
            switch (evidence[at])
            {
                case CheckAnswered answered:
                    var check = model.CheckAt(answered.Check);
                    var seen = model.FindingAt(model.Checks[check].Finding);
                    counts[at] = sources.Add((seen, check));
                    hard.Add(seen);
                    break;
                case FindingTold told:
                    var heard = model.FindingAt(told.Finding);
                    counts[at] = sources.Add((heard, -1));
                    hard.Add(heard);
                    break;
                case FindingHinted hinted:
                    hints.Add((at, model.FindingAt(hinted.Finding)));
                    break;
                case RepairFailed:
                    counts[at] = true;
                    Settle();
                    break;
                default:
                    throw new ArgumentException($"Evidence of the kind {evidence[at].GetType().Name} is not known here.", nameof(evidence));
            }
        }

        Settle();
        return counts;

        void Settle()
        {
            foreach (var (at, finding) in hints) counts[at] = !hard.Contains(finding);
            sources.Clear();
            hard.Clear();
            hints.Clear();
        }
    }
}
