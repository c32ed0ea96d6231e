using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R030 to R035: chances that contradict each other, or say next to nothing.</summary>
internal static class StrengthRules
{
    public static readonly LintRule WeakerThanLeak = new("R030", Severity.Error, "weaker than seen anyway",
        "'shows as' says how often a finding is seen if only this fault is there, everything counted. It cannot be seen less often than 'seen anyway' with no fault at all: a fault adds to what is seen, it never takes away. Raise the word, lower 'seen anyway', or leave the line out.");

    public static readonly LintRule AddUp = new("R031", Severity.Error, "chances that add up to more than 1",
        "The states of one finding exclude each other, so the chances of all of them for one fault cannot add up to more than 1. Weaken the less usual ones. (Up to 1.05 it is taken as rounding of the words, and scaled down.)");

    public static readonly LintRule LeakAddsUp = new("R032", Severity.Error, "'seen anyway' leaves no room for normal",
        "The abnormal states of a finding with nothing wrong must leave the normal one at least 10 %; a finding that is mostly abnormal on sound machines is written the wrong way round.");

    public static readonly LintRule SameAsLeak = new("R033", Severity.Warning, "no stronger than seen anyway",
        "The finding is seen just as often without the fault, so the line says nothing. Raise the word, lower 'seen anyway', or leave the line out.");

    public static readonly LintRule NoRoomBeside = new("R034", Severity.Error, "no room beside what is seen anyway",
        "The states of one finding exclude each other. When another state is 'seen anyway' on many sound machines, a fault can hardly show as this one nearly always: the fault would have to hide what is there without it. Weaken the word, lower 'seen anyway', or list the other state for this fault too. (It is told when the two together come to more than 1.25.)");

    public static readonly LintRule SeldomFound = new("R035", Severity.Warning, "a fault that its checks seldom show",
        "All that a check can tell of this fault is seen with it less often than in one of five cases, so looking for it hardly ever finds it. Often the words were taken the wrong way round. Raise one of them, or name another finding.");
}
