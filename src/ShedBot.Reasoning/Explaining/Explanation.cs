using System.Collections.Immutable;

namespace ShedBot.Reasoning.Explaining;

/// <summary>Why the belief is what it is: for each fault of the model, in its order, what speaks for and against it.</summary>
public sealed record Explanation(ImmutableArray<FaultReasons> Faults)
{
    /// <exception cref="InvalidOperationException">The model has no such fault.</exception>
    public FaultReasons For(string fault) => Faults.First(f => f.Fault == fault);
}

/// <summary>What speaks for and against one fault, strongest first; weights nearer to 0 than <see cref="Explainer.Faint"/> are not told.</summary>
/// <param name="Probability">P(fault | everything learnt), at the bound of the explanation; a belief with a raised bound differs a little.</param>
public sealed record FaultReasons(string Fault, double Probability, ImmutableArray<Reason> For, ImmutableArray<Reason> Against);

/// <summary>How much one piece of evidence speaks for a fault (above 0) or against it (below 0).</summary>
/// <param name="Evidence">Its index in the list of evidence.</param>
/// <param name="Decibans">
/// What it adds to everything else: logit P(f | all) - logit P(f | all but this), in decibans. Does not depend on the order of answers, but the
/// weights do not add up either.
/// </param>
/// <param name="AsAsked">What it added when it came: the change in log-odds from just before, in decibans. These add up, but depend on the order.</param>
public readonly record struct Reason(int Evidence, double Decibans, double AsAsked);
