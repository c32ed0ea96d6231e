namespace ShedBot.Reasoning.Inference;

/// <summary>How far the sum over fault sets goes.</summary>
/// <param name="LargestSet">The most faults that may be present at once to begin with; 1 or more.</param>
/// <param name="RaiseTo">The bound may be raised to this many faults.</param>
/// <param name="RaiseAbove">It is raised while <see cref="Belief.LeftOut"/> is above this, in [0, 1].</param>
/// <param name="MaxSets">
/// The most sets that are looked at. Where there are more up to the bound, every single fault stays in, and larger sets are built
/// from the faults that the evidence makes most likely; the rest is counted as left out.
/// </param>
public sealed record InferenceOptions(int LargestSet = 2, int RaiseTo = 3, double RaiseAbove = 0.01, int MaxSets = 60_000)
{
    private const int MaxCompared = 8_000;

    /// <summary>For many inferences that are held against each other: one bound for all of them, and few enough sets to be quick.</summary>
    internal InferenceOptions Steady => this with { RaiseTo = LargestSet, MaxSets = Math.Min(MaxSets, MaxCompared) };
}
