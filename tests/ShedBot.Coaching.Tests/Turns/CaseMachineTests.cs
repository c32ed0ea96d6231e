using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Tests.Turns;

public sealed class CaseMachineTests
{
    [Theory]
    [InlineData(CasePhase.Opening, CaseTrigger.AskMore, CasePhase.Asking)]
    [InlineData(CasePhase.Asking, CaseTrigger.ShowRepair, CasePhase.Repairing)]
    [InlineData(CasePhase.Repairing, CaseTrigger.Prove, CasePhase.Proving)]
    [InlineData(CasePhase.Proving, CaseTrigger.Hold, CasePhase.Solved)]
    [InlineData(CasePhase.Solved, CaseTrigger.ComeBack, CasePhase.Asking)]
    public void After_ThePathOfAMendedBike_IsPermitted(CasePhase before, CaseTrigger trigger, CasePhase after) =>
        Assert.Equal(after, CaseMachine.After(before, trigger));

    [Theory]
    [InlineData(CasePhase.Asking, CaseTrigger.Hold)]
    [InlineData(CasePhase.Repairing, CaseTrigger.Hold)]
    [InlineData(CasePhase.Stopped, CaseTrigger.AskMore)]
    [InlineData(CasePhase.HandedOver, CaseTrigger.ComeBack)]
    [InlineData(CasePhase.Left, CaseTrigger.ShowRepair)]
    public void After_AStepThatMakesNoSense_Throws(CasePhase before, CaseTrigger trigger) =>
        Assert.Throws<InvalidOperationException>(() => CaseMachine.After(before, trigger));

    [Fact]
    public void Draw_TheDiagramInTheDocumentation_IsTheOneInForce()
    {
        var page = File.ReadAllText(Path.Combine(Samples.Repository.Root, "docs", "case-phases.md"));
        Assert.Contains(CaseMachine.Draw().Trim().ReplaceLineEndings("\n"), page.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }
}
