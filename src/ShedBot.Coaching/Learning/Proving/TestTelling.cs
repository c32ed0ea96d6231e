using System.Globalization;

namespace ShedBot.Coaching.Learning.Proving;

/// <summary>Puts what came of a test into words for moderators.</summary>
internal static class TestTelling
{
    /// <returns>Null where there was nothing to test.</returns>
    public static LearningTest? Of(LearningKind kind, Tested tested)
    {
        if (tested.Proof is not { } proof || tested.Moved + tested.HeldBack == 0) return null;
        return new LearningTest(kind, tested.Moved, tested.HeldBack, proof.Better, proof.Worse, tested.Moved > 0 ? Passed(kind, tested, proof) : Held(kind, tested, proof));
    }

    private static string Passed(LearningKind kind, Tested tested, Proof proof)
    {
        var says = $"{Numbers(kind, tested.Moved)} {(tested.Moved == 1 ? "moves" : "move")}: cases that had no part in it were foretold better for "
            + $"{Members(proof.Better)}, worse for {None(proof.Worse)}.";
        return tested.HeldBack == 0 ? says : $"{says} {LearningWords.Of(tested.HeldBack, "more stays as it is", "more stay as they are")}: alone {(tested.HeldBack == 1 ? "it" : "they")} made nothing clearer.";
    }

    private static string Held(LearningKind kind, Tested tested, Proof proof)
    {
        var (stay, them) = tested.HeldBack == 1 ? ("stays as it is", "it") : ("stay as they are", "them");
        var says = $"{Numbers(kind, tested.HeldBack)} {stay}, though the counts would move {them}: ";
        return says + (proof.Sum <= 0
            ? "cases that had no part in it were foretold best by your rules as they are."
            : $"cases that had no part in it were foretold better for {Members(proof.Better)}, worse for {None(proof.Worse)}"
                + (proof.Better > 1 && proof.Worse == 0 ? ", but by so little that it may be chance; more cases will tell." : ". That may be chance, or one member's doing; more cases will tell."));
    }

    private static string Numbers(LearningKind kind, int count) => LearningWords.Of(count, "number", "numbers") + kind switch
    {
        LearningKind.Odds => " about how common causes are",
        LearningKind.Links => " about how often causes show",
        _ => " about how often repairs help",
    };

    private static string None(int count) => count == 0 ? "none" : count.ToString(CultureInfo.InvariantCulture);

    private static string Members(int count) => LearningWords.Of(count, "member", "members");
}
