using System.Collections.Immutable;

namespace ShedBot.Reasoning.Planning;

/// <summary>A step that was weighed.</summary>
/// <param name="ExpectedCost">Minutes from now to the end of the case if this step is taken next, its own cost and any cover it opens included.</param>
public sealed record ConsideredStep(NextStep Step, double ExpectedCost);

/// <summary>How the expected costs of a <see cref="Decision"/> were found.</summary>
public enum PlanMethod
{
    /// <summary>By valuing every course that can follow: no plan is better, as far as the model is right.</summary>
    Exact,

    /// <summary>By looking a few steps ahead and finishing with the best order of repairs: an upper bound on what the step will cost.</summary>
    LookAhead,
}

/// <summary>The next step and what it was weighed against.</summary>
/// <param name="ExpectedCost">Minutes from now to the end of the case.</param>
/// <param name="Considered">Every step that was open and could matter, best first; never empty, since help is always open.</param>
/// <param name="RepairOrder">The repairs in the order to do them if nothing more were asked, up to the point where help is cheaper.</param>
public sealed record Decision(
    NextStep Step,
    double ExpectedCost,
    ImmutableArray<ConsideredStep> Considered,
    PlanMethod Method,
    ImmutableArray<string> RepairOrder);
