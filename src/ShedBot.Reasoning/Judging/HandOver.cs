using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Reasoning.Judging;

/// <summary>Why a case should go to a human. Findings that mean 'stop riding' do not come through here: they bypass all weighing.</summary>
public enum HandOverReason
{
    /// <summary>Every other plan costs more than help.</summary>
    HelpIsCheapest,

    /// <summary>'Something that is not listed' is the likeliest fault, or over the limit.</summary>
    SomethingElse,

    /// <summary>The answers still contradict each other after the culprit was asked again.</summary>
    Contradiction,

    /// <summary>Every step that is left is barred: too dangerous, no tool, no skill, or none is left.</summary>
    NoStepLeft,

    /// <summary>The same repair has failed twice.</summary>
    SameRepairFailedTwice,

    /// <summary>Too many questions, or too many minutes, without progress.</summary>
    NoProgress,
}

/// <param name="LargestOther">P('something else') above this hands over; in (0, 1].</param>
/// <param name="Questions">More questions than this without progress hand over.</param>
/// <param name="Minutes">More minutes than this without progress hand over.</param>
public sealed record HandOverLimits(double LargestOther = 0.3, int Questions = 12, double Minutes = double.PositiveInfinity);

/// <summary>How the case stands, as far as it bears on handing over.</summary>
/// <param name="Conflict">Null where it was not measured.</param>
/// <param name="AskedAgain">True when the culprit of the conflict has been asked again once.</param>
/// <param name="HelpIsCheapest">True when the planner's best step is to ask for help.</param>
/// <param name="AnyStepLeft">False when the planner has no check or repair left that it may offer.</param>
/// <param name="QuestionsWithoutProgress">0 or more.</param>
/// <param name="MinutesWithoutProgress">0 or more.</param>
public sealed record CaseStanding(
    Belief Belief,
    IReadOnlyList<Evidence> Evidence,
    Conflict? Conflict,
    bool AskedAgain,
    bool HelpIsCheapest,
    bool AnyStepLeft,
    int QuestionsWithoutProgress,
    double MinutesWithoutProgress = 0);

/// <summary>When to hand a case over to a human.</summary>
public static class HandOver
{
    /// <summary>Every reason that holds, in the order of <see cref="HandOverReason"/>; empty to carry on.</summary>
    public static ImmutableArray<HandOverReason> Judge(CaseStanding standing, HandOverLimits? limits = null)
    {
        limits ??= new();
        var reasons = ImmutableArray.CreateBuilder<HandOverReason>();
        if (standing.HelpIsCheapest) reasons.Add(HandOverReason.HelpIsCheapest);
        if (OtherLeads(standing.Belief, limits.LargestOther)) reasons.Add(HandOverReason.SomethingElse);
        if (standing is { AskedAgain: true, Conflict.IsContradiction: true }) reasons.Add(HandOverReason.Contradiction);
        if (!standing.AnyStepLeft) reasons.Add(HandOverReason.NoStepLeft);
        if (standing.Evidence.OfType<RepairFailed>().GroupBy(r => r.Repair).Any(r => r.Count() > 1))
            reasons.Add(HandOverReason.SameRepairFailedTwice);
        if (standing.QuestionsWithoutProgress > limits.Questions || standing.MinutesWithoutProgress > limits.Minutes)
            reasons.Add(HandOverReason.NoProgress);
        return reasons.ToImmutable();
    }

    private static bool OtherLeads(Belief belief, double limit)
    {
        var faults = belief.Model.Faults;
        var other = Enumerable.Range(0, faults.Length).Where(f => faults[f].IsOther).Select(belief.Marginal).DefaultIfEmpty(0).Max();
        return other > limit || (other > 0 && Enumerable.Range(0, faults.Length).All(f => faults[f].IsOther || belief.Marginal(f) < other));
    }
}
