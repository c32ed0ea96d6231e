using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R040 to R049: rules that can never change an outcome, and faults that cannot be found.</summary>
internal static class ReachRules
{
    public static readonly LintRule FaultOutOfReach = new("R040", Severity.Warning, "a fault that no check can reach",
        "No check tells any finding that the fault shows as. The coach can only guess it from the complaint and try the repair. Add a check for one of its findings, or a finding that it shows as.");

    public static readonly LintRule Twins = new("R041", Severity.Warning, "two faults that nothing tells apart",
        "Both show as the same findings about as often (within one word at the strong end), and the same facts move them, but their repairs differ. No question can ever decide between them. Add a finding that only one of them shows as, or mend both with one repair.");

    public static readonly LintRule UnlinkedFinding = new("R042", Severity.Warning, "a finding that no fault shows as",
        "Learning it changes the chance of no fault, so it is never worth asking. Name it under 'shows as' of a fault, or take it out. (A finding with a 'stop riding' state is worth asking for its own sake.)");

    public static readonly LintRule IdleCheck = new("R043", Severity.Warning, "a check that can change nothing",
        "It tells a finding that no fault shows as, so the coach will never ask it.");

    public static readonly LintRule ComplaintOfNothing = new("R044", Severity.Error, "a complaint that no fault shows as",
        "A rider who comes with this trouble would get questions that have nothing to do with it. Name it under 'shows as' of every fault that gives it.");

    public static readonly LintRule IdleFact = new("R045", Severity.Warning, "a fact that moves nothing",
        "Asking for it changes nothing. Name it under 'moved by' of a fault or 'only if' of a service task, or take it out.");

    public static readonly LintRule UntoldFinding = new("R046", Severity.Warning, "a finding that nothing can tell",
        "No check tells it and no state of it has phrases under 'riders say', so it can never be learnt. Add a check, or phrases.");

    public static readonly LintRule IdleCondition = new("R047", Severity.Warning, "a condition that moves nothing",
        "Odds times 1 are the same odds. Say how many times likelier the fault is, or take the line out.");

    public static readonly LintRule UnusedCover = new("R048", Severity.Warning, "a cover that nothing is behind",
        "No check and no repair names it, so its cost is never counted and its steps are never shown.");
}
