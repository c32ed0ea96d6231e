using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Coaching.Tests.Teaching.Moves;

/// <summary>When a round is due, on both sides of each limit.</summary>
public sealed class RoundPlanTests
{
    private static readonly TeachingSettings Settings = TeachingSettings.New(School.Club);
    private static readonly ClosedMark Ten = new(10, "ten"), Eleven = new(11, "eleven");
    private static readonly LearningBook Looked = LearningBook.New(School.Club) with { LookedAt = School.Noon, Looked = RoundPlan.Looked(Settings, Ten) };

    [Fact]
    public void Of_NothingNew_IsNotDueHoweverLong() => Assert.Equal(RoundKind.None, RoundPlan.Of(Settings, Looked, 10, Ten, School.Noon.AddDays(400)));

    [Fact]
    public void Of_NoCases_IsNotDue() => Assert.Equal(RoundKind.None, RoundPlan.Of(Settings, LearningBook.New(School.Club), 0, new ClosedMark(0, "none"), School.Noon));

    [Fact]
    public void Of_NeverLooked_IsDue() => Assert.Equal(RoundKind.Look, RoundPlan.Of(Settings, LearningBook.New(School.Club), 10, Ten, School.Noon));

    [Theory]
    [InlineData(23.9, false)]
    [InlineData(24, true)]
    [InlineData(-24, true)]
    public void Of_NewCases_IsDueAfterADay(double hours, bool due) =>
        Assert.Equal(due ? RoundKind.Look : RoundKind.None, RoundPlan.Of(Settings, Looked, 11, Eleven, School.Noon.AddHours(hours)));

    [Fact]
    public void Of_ChosenAnew_IsDueAtOnce()
    {
        Assert.Equal(RoundKind.Look, RoundPlan.Of(Settings with { Learning = LearningMode.Automatic }, Looked, 10, Ten, School.Noon));
        Assert.Equal(RoundKind.Look, RoundPlan.Of(Settings with { MostFactor = 2 }, Looked, 10, Ten, School.Noon));
        Assert.Equal(RoundKind.Look, RoundPlan.Of(Settings with { Off = ["odds x"] }, Looked, 10, Ten, School.Noon));
        Assert.Equal(RoundKind.None, RoundPlan.Of(Settings with { TwoPeople = true }, Looked, 10, Ten, School.Noon));
    }

    [Fact]
    public void Of_Off_LooksAtNothingButCountsAnewWhatIsGone()
    {
        var off = Settings with { Learning = LearningMode.Off };
        Assert.Equal(RoundKind.None, RoundPlan.Of(off, LearningBook.New(School.Club), 10, Ten, School.Noon));
        Assert.Equal(RoundKind.CountAnew, RoundPlan.Of(off, Looked with { Anew = "learnt 1\nodds x 2\n" }, 10, Ten, School.Noon));
    }

    [Theory]
    [InlineData(LearningMode.Proposals, false, false, false, "Nothing")]
    [InlineData(LearningMode.Proposals, false, true, false, "Withdraw")]
    [InlineData(LearningMode.Proposals, true, false, false, "Propose")]
    [InlineData(LearningMode.Proposals, true, true, false, "Keep")]
    [InlineData(LearningMode.Proposals, true, true, true, "Propose")]
    [InlineData(LearningMode.Automatic, true, false, false, "Publish")]
    [InlineData(LearningMode.Automatic, true, true, false, "Publish")]
    [InlineData(LearningMode.Automatic, false, true, false, "Withdraw")]
    public void Of_WhatWasCounted_IsOneStep(LearningMode mode, bool clear, bool isOpen, bool movedSince, string step) =>
        Assert.Equal(Enum.Parse<RoundStep>(step), RoundPlan.Of(mode, [new LearntStep("odds x", 1, 2, clear)], isOpen, isOpen ? Counted("") : null, movedSince ? [new LearntStep("odds x", 2, 3, true)] : []));

    [Fact]
    public void Of_WhatDidNotGoLiveByItself_IsNotTriedAgainUntilItMoves()
    {
        ImmutableArray<LearntStep> clear = [new("odds x", 1, 2, true)];
        Assert.Equal(RoundStep.Keep, RoundPlan.Of(LearningMode.Automatic, clear, true, Counted("It came out worse."), []));
        Assert.Equal(RoundStep.Publish, RoundPlan.Of(LearningMode.Automatic, clear, true, Counted("It came out worse."), clear));
    }

    [Theory]
    [InlineData(10, 17, false)]
    [InlineData(10, 18, true)]
    [InlineData(100, 124, false)]
    [InlineData(100, 125, true)]
    public void Of_TakenBack_IsQuietUntilClearlyMoreCases(int then, int closed, bool due) =>
        Assert.Equal(due ? RoundKind.Look : RoundKind.None, RoundPlan.Of(Settings, LearningBook.New(School.Club).Quiet(then), closed, Ten, School.Noon));

    private static CountedNumbers Counted(string why) => new(
        new CountBasis(0, "", "", School.Noon, ""), Knowledge.Compiling.Learnt.Nothing, [], ImmutableSortedSet.Create<string>(StringComparer.Ordinal), 0, 0, 0, why);
}
