using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Judging;

/// <summary>How unexpected each answer was when it came: -log2 P(answer | the answers before).</summary>
public static class Surprise
{
    /// <summary>Over this many bits (a chance of about 3 %) an answer is worth confirming.</summary>
    public const double Confirm = 5;

    /// <summary>Bits for each piece of evidence, 0 or more. 0 for one that does not count, and for a hint: only ratios of its weights mean anything.</summary>
    /// <exception cref="ImpossibleEvidenceException">No set that was looked at can give this evidence.</exception>
    public static ImmutableArray<double> Of(DiagnosticModel model, IReadOnlyList<Evidence> evidence, InferenceOptions? options = null)
    {
        var steady = (options ?? new()).Steady;
        var counts = Standing.Of(model, evidence);
        var bits = ImmutableArray.CreateBuilder<double>(evidence.Count);
        var before = 0.0;
        for (var at = 0; at < evidence.Count; at++)
        {
            if (!counts[at])
            {
                bits.Add(0);
                continue;
            }

            var after = Inferrer.LogEvidence(model, evidence, [.. counts.Select((c, i) => c && i <= at)], steady);
            bits.Add(evidence[at] is FindingHinted ? 0 : Math.Max(0, (before - after) / Math.Log(2)));
            before = after;
        }

        return bits.MoveToImmutable();
    }
}
