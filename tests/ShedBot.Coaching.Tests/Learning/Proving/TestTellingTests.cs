using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Learning.Proving;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Tests.Learning.Proving;

/// <summary>What moderators read of numbers that were put to the test.</summary>
public class TestTellingTests
{
    [Fact]
    public void Of_SomeMoved_SaysForHowManyItWasBetterAndWhatStays() => Assert.Equal(
        "4 numbers about how common causes are move: cases that had no part in it were foretold better for 2 members, worse for 1. 1 more stays as it is: alone it made nothing clearer.",
        Says(LearningKind.Odds, moved: 4, heldBack: 1, 2, 1, -0.5));

    [Fact]
    public void Of_GainThatIsNotSure_SaysThatMoreCasesWillTell() => Assert.Equal(
        "1 number about how often repairs help stays as it is, though the counts would move it: cases that had no part in it were foretold better for 1 member, worse for 1. "
        + "That may be chance, or one member's doing; more cases will tell.",
        Says(LearningKind.Mends, moved: 0, heldBack: 1, 2, -0.5));

    [Fact]
    public void Of_GainOfAllThatIsTooSmall_DoesNotBlameOneMember() => Assert.Equal(
        "1 number about how often repairs help stays as it is, though the counts would move it: cases that had no part in it were foretold better for 2 members, worse for none, "
        + "but by so little that it may be chance; more cases will tell.",
        Says(LearningKind.Mends, moved: 0, heldBack: 1, 0.2, 0.1));

    [Fact]
    public void Of_NoGain_SaysThatTheRulesDoBest() => Assert.Equal(
        "3 numbers about how often causes show stay as they are, though the counts would move them: cases that had no part in it were foretold best by your rules as they are.",
        Says(LearningKind.Links, moved: 0, heldBack: 3, -2, 1));

    [Fact]
    public void Of_NothingThatWouldMove_SaysNothing() => Assert.Null(TestTelling.Of(LearningKind.Odds, new Tested([1], [], new Proof([1, 2], [3]), 0, 0)));

    [Fact]
    public void Card_AllHeldBack_IsNoProposalAndSaysWhy()
    {
        var report = new LearningReport(Learnt.Nothing, [], 40, 30, 12)
        {
            Tests = [TestTelling.Of(LearningKind.Links, new Tested([1], [], new Proof([-2, 1], [-1]), 0, 3))!],
        };

        var card = LearningCards.Of(report);

        Assert.Equal("Nothing sure enough to learn", card.Title);
        Assert.Contains("From 40 closed cases of 12 members, 30 of them mended and stayed so.", Talk.Text(card), StringComparison.Ordinal);
        Assert.Contains("Tried on cases kept aside: 3 numbers about how often causes show stay as they are", Talk.Text(card), StringComparison.Ordinal);
    }

    private static string? Says(LearningKind kind, int moved, int heldBack, params double[] gains) =>
        TestTelling.Of(kind, new Tested([1], [], new Proof(gains, [gains.Sum()]), moved, heldBack))?.Says;
}
