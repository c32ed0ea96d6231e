using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>What a case says of its causes, against the reasoning that the coach uses, where the two are about the same thing.</summary>
public class StoryWeigherTests
{
    private static readonly DiagnosticModel Model = Pump.Knowledge.Model;

    [Fact]
    public void Chances_BeforeAnyRepair_AreThoseOfTheReasoning()
    {
        var chances = Chances(Case(1, "m", CasePhase.Left, Has("no-water"), Said("feel-hose", "kinked"), Said("look-wheel", "worn")));

        var belief = Inferrer.Infer(
            Model,
            [new FindingTold("no-water", Finding.Yes, new AnswerError(0.02, 0.02)), new CheckAnswered("feel-hose", "kinked"), new CheckAnswered("look-wheel", "worn")],
            new InferenceOptions(LargestSet: 2, RaiseTo: 2));
        for (var fault = 0; fault < chances.Length; fault++) Assert.Equal(belief.Marginal(fault), chances[fault], 9);
    }

    /// <summary>'It held' rules out a lasting cause of the complaint, and says nothing of a fault that does not give it.</summary>
    [Fact]
    public void Chances_RepairHeld_LeavesABystanderAlone()
    {
        var before = Chances(Case(1, "m", CasePhase.Left, Has("no-water")));
        var after = Chances(Case(2, "m", CasePhase.Solved, Has("no-water"), Held("open-tap")));

        Assert.InRange(after[Model.FaultAt("tap-shut")], 0.85, 1);
        Assert.InRange(after[Model.FaultAt("wheel-worn")], 0, before[Model.FaultAt("wheel-worn")] / 2);
        // Its prior is 0.01; a few who tell of no water mean the humming.
        Assert.InRange(after[Model.FaultAt("bearing-dry")], 0.009, 0.03);
    }

    [Fact]
    public void Chances_RepairFailed_SpeaksAgainstWhatItMends()
    {
        var before = Chances(Case(1, "m", CasePhase.Left, Has("no-water")));
        var after = Chances(Case(2, "m", CasePhase.Left, Has("no-water"), Failed("open-tap")));

        Assert.True(after[Model.FaultAt("tap-shut")] < before[Model.FaultAt("tap-shut")] / 3);
        Assert.True(after[Model.FaultAt("hose-kinked")] > before[Model.FaultAt("hose-kinked")]);
    }

    /// <summary>Two answers to a check that was asked again both count: kinked and straight at 8 % error each cancel out.</summary>
    [Fact]
    public void Chances_AnswerAskedForAgain_BothCount()
    {
        var doubted = Said("feel-hose", "kinked") with { Struck = true };
        var chances = Chances(Case(1, "m", CasePhase.Left, Has("no-water"), doubted, Line(EntryKind.AskedAgain, "feel-hose"), Said("feel-hose", "straight")));
        var plain = Chances(Case(2, "m", CasePhase.Left, Has("no-water")));

        Assert.Equal(plain, chances, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void Chances_AnswerTakenBack_DoesNotCount()
    {
        var struck = Said("feel-hose", "kinked") with { Struck = true };

        Assert.Equal(Chances(Case(1, "m", CasePhase.Left, Has("no-water"))), Chances(Case(2, "m", CasePhase.Left, Has("no-water"), struck)));
    }

    [Fact]
    public void Read_RulesThatAreGone_AreLeftOut()
    {
        var chances = Chances(Case(1, "m", CasePhase.Left, Has("gone"), Has("no-water"), Said("gone", "yes"), Said("feel-hose", "gone"), Failed("gone")));

        Assert.Equal(Chances(Case(2, "m", CasePhase.Left, Has("no-water"))), chances);
        Assert.Null(StoryReader.Read(Case(3, "m", CasePhase.Left, Has("gone")), Pump.Knowledge));
    }

    private static double[] Chances(ClosedCase closed)
    {
        // The doubt of the reasoning above: a complaint told for sure, with the one other complaint of these rules.
        var story = StoryReader.Read(closed, Pump.Knowledge)!;
        return CaseWeigher.AsCoach(new RuleSheet(Pump.Knowledge)).Chances(story);
    }
}
