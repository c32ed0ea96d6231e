using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Judging;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Tests.Inference;

namespace ShedBot.Reasoning.Tests.Judging;

/// <summary>Each rule has a pair: it holds, and it just does not.</summary>
public class HandOverTests
{
    private static readonly CaseStanding Fine = Standing(0.1);
    private static readonly Conflict Clash = new(1, [1], null);

    private static CaseStanding Standing(double other) => new(
        Inferrer.InferSingle(DiagnosticModel.Create([new("f", (1 - other) / 2), new("g", (1 - other) / 2), new("other", other, IsOther: true)], [], [], [], [], 50), []),
        [], null, AskedAgain: false, HelpIsCheapest: false, AnyStepLeft: true, QuestionsWithoutProgress: 0);

    [Fact]
    public void Judge_NothingAgainstGoingOn_IsEmpty() => Assert.Empty(HandOver.Judge(Fine));

    [Fact]
    public void Judge_HelpIsCheapest_SaysSo() => Assert.Equal([HandOverReason.HelpIsCheapest], HandOver.Judge(Fine with { HelpIsCheapest = true }).ToArray());

    [Theory]
    [InlineData(0.29, false)]
    [InlineData(0.31, true)]
    public void Judge_SomethingElseOverTheLimit_HandsOver(double other, bool expected) =>
        Assert.Equal(expected, HandOver.Judge(Standing(other)).Contains(HandOverReason.SomethingElse));

    [Theory]
    [InlineData(0.33, false)]
    [InlineData(0.34, true)]
    public void Judge_SomethingElseIsLikeliest_HandsOver(double other, bool expected) =>
        Assert.Equal(expected, HandOver.Judge(Standing(other), new(LargestOther: 0.5)).Contains(HandOverReason.SomethingElse));

    [Fact]
    public void Judge_Contradiction_OnlyAfterAskingAgain()
    {
        Assert.Empty(HandOver.Judge(Fine with { Conflict = Clash }));
        Assert.Equal([HandOverReason.Contradiction], HandOver.Judge(Fine with { Conflict = Clash, AskedAgain = true }).ToArray());
        Assert.Empty(HandOver.Judge(Fine with { Conflict = Clash with { RareFault = "f" }, AskedAgain = true }));
        Assert.Empty(HandOver.Judge(Fine with { Conflict = Clash with { Bits = 0 }, AskedAgain = true }));
    }

    [Fact]
    public void Judge_NoStepLeft_SaysSo() => Assert.Equal([HandOverReason.NoStepLeft], HandOver.Judge(Fine with { AnyStepLeft = false }).ToArray());

    [Fact]
    public void Judge_SameRepairFailedTwice_SaysSo()
    {
        ImmutableArray<Evidence> different = [new RepairFailed("a"), new RepairFailed("b")];
        Assert.Empty(HandOver.Judge(Fine with { Evidence = different }));
        Assert.Equal([HandOverReason.SameRepairFailedTwice], HandOver.Judge(Fine with { Evidence = different.Add(new RepairFailed("a", Better: true)) }).ToArray());
    }

    [Theory]
    [InlineData(12, 30, false)]
    [InlineData(13, 30, true)]
    [InlineData(12, 31, true)]
    public void Judge_NoProgress_HandsOver(int questions, double minutes, bool expected) => Assert.Equal(
        expected,
        HandOver.Judge(Fine with { QuestionsWithoutProgress = questions, MinutesWithoutProgress = minutes }, new(Minutes: 30)).Contains(HandOverReason.NoProgress));

    [Fact]
    public void Judge_SeveralReasons_TellsThemAllInOrder() => Assert.Equal(
        [HandOverReason.HelpIsCheapest, HandOverReason.NoStepLeft],
        HandOver.Judge(Fine with { HelpIsCheapest = true, AnyStepLeft = false }).ToArray());

    [Fact]
    public void Judge_RunningExample_IsNoReason() => Assert.Empty(HandOver.Judge(Fine with
    {
        Belief = Inferrer.Infer(Examples.Three(), []),
        Evidence = Examples.Answers(("c", true)),
    }));
}
