using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Judging;

/// <summary>Whether the answers fit together (Jensen, Chamberlain, Nordahl and Jensen 1991, from memory).</summary>
/// <param name="Bits">log2 [product of P(e_i) / P(e)]. Above 0 the answers fit together worse than if they had nothing to do with each other.</param>
/// <param name="Drops">For each piece of evidence how much <paramref name="Bits"/> falls when it is left out; 0 for a piece that does not count.</param>
/// <param name="RareFault">
/// The fault, if any, whose probability has risen by at least as many bits: then this is a rare case rather than a contradiction.
/// </param>
public sealed record Conflict(double Bits, ImmutableArray<double> Drops, string? RareFault)
{
    /// <summary>True when the answers clash and no rare fault explains it.</summary>
    public bool IsContradiction => Bits > 0 && RareFault is null;

    /// <summary>The index of the piece of evidence to ask again, in other words; null where nothing clashes.</summary>
    public int? Culprit => IsContradiction && Drops.Max() > 0 ? Drops.IndexOf(Drops.Max()) : null;

    /// <summary>conf = sum of log2 P(e_i) - log2 P(e), from natural logarithms.</summary>
    public static double ToBits(double jointLog, IEnumerable<double> singleLogs) => (singleLogs.Sum() - jointLog) / Math.Log(2);

    /// <summary>Measures the clash under the priors of the model (adjust them to the machine first). Repairs that failed count as findings.</summary>
    /// <remarks>Two inferences for each piece of evidence; all at the starting bound of the options, with at most 8,000 sets.</remarks>
    /// <exception cref="ImpossibleEvidenceException">No set that was looked at can give this evidence.</exception>
    public static Conflict Of(DiagnosticModel model, IReadOnlyList<Evidence> evidence, InferenceOptions? options = null)
    {
        var steady = (options ?? new()).Steady;
        var counts = Standing.Of(model, evidence);
        var before = Inferrer.Infer(model, evidence, new bool[evidence.Count], steady);
        var after = Inferrer.Infer(model, evidence, counts, steady);
        var used = Enumerable.Range(0, evidence.Count).Where(at => counts[at]).ToList();
        var singles = used.ToDictionary(at => at, at => Log([.. counts.Select((_, i) => i == at)]));
        var bits = ToBits(after.LogEvidence, singles.Values);
        var drops = counts.Select((c, at) => c ? bits - ToBits(Log([.. counts.Select((d, i) => d && i != at)]), singles.Where(s => s.Key != at).Select(s => s.Value)) : 0);
        var rare = Enumerable.Range(0, model.Faults.Length)
            .Select(f => (Fault: f, Rise: Math.Log2(after.Marginal(f) / before.Marginal(f))))
            .OrderByDescending(f => f.Rise).First();
        return new(bits, [.. drops], bits > 0 && rare.Rise >= bits ? model.Faults[rare.Fault].Id : null);

        double Log(bool[] part) => Inferrer.LogEvidence(model, evidence, part, steady);
    }
}
