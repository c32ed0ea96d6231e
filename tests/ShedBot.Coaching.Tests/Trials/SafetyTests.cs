using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>What means stop under the old rules and would not be come upon under the new ones is noticed, and such rules must not go live.</summary>
public class SafetyTests
{
    private const string LookWheel = "    minutes: 2\n    cover: lid\n    hazard: low";

    public static TheoryData<string, string, string> Losses => new()
    {
        // Nothing is dearer than handing over, which is 180 minutes here: a check that is will never be chosen.
        { LookWheel, "    minutes: 181\n    cover: lid\n    hazard: low", "no question would come upon it" },
        { "    called: the lid (four screws)\n    minutes: 6", "    called: the lid (four screws)\n    minutes: 200", "no question would come upon it" },
        // Not coached above a medium hazard.
        { LookWheel, "    minutes: 2\n    cover: lid\n    hazard: high", "no question would come upon it" },
        // The words that make it a stop are gone.
        { ", stop riding: A cracked wheel can fly apart. Pull the plug and leave it.}", "}", "no question would come upon it" },
        { "the pump smokes\n    riders say: [smoke comes out of the pump]", "the pump is hazy\n    riders say: [a haze stands over the motor]", "would not be heard as an emergency" },
        { "    ends coaching: yes", "    ends coaching: no", "would not be heard as an emergency" },
        { "Turn it by hand and look at each blade]\n    minutes: 2\n    cover: lid\n    hazard: low\n    hands on: yes", "Turn it by hand and look at each blade]\n    minutes: 2\n    cover: lid\n    hazard: low\n    hands on: no", "safe to put hands on" },
    };

    private const string Dangers = "  dangers: [{says: It smokes, emergency: smoke}]";

    [Fact]
    public void Of_DangerThatIsNotAskedAboutAnyMore_IsToldAndNotSafe() => Assert.Equal(
        "the question before hands-on work would not offer \"It smokes\" any more",
        Assert.Single(Run(Pump.Knowledge, PumpEdits.Changed(Dangers, "  dangers: [{says: I felt it prickle, emergency: shock}]")).SafetyLost));

    [Fact]
    public void Of_DangerThatIsAskedAboutBesides_IsSafe() => Assert.Empty(
        Run(Pump.Knowledge, PumpEdits.Changed(Dangers, "  dangers: [{says: It smokes, emergency: smoke}, {says: I felt it prickle, emergency: shock}]")).SafetyLost);

    [Fact]
    public void Of_StopThatNoQuestionTells_IsToldInTheRulesOwnWords() => Assert.Equal(
        "what the wheel inside looks like: \"It is cracked\" means stop riding, and no question would come upon it any more",
        Assert.Single(Run(Pump.Knowledge, PumpEdits.Changed(LookWheel, "    minutes: 2\n    cover: lid\n    hazard: high")).SafetyLost));

    [Fact]
    public void Of_EmergencyPhrases_AreCountedAndThoseStillHeard()
    {
        var safety = Run(Pump.Knowledge, PumpEdits.Changed("the pump smokes\n    riders say: [smoke comes out of the pump]", "the pump is hazy\n    riders say: [a haze stands over the motor]")).Safety;
        Assert.Equal((3, 2), (safety.EmergencyPhrases, safety.StillHeard));
    }

    [Theory]
    [InlineData(true, true, 0, 0, false)]
    [InlineData(true, false, 0, 0, true)]
    [InlineData(false, false, 0, 0, false)]
    [InlineData(false, true, 0, 3, false)]
    [InlineData(true, true, 4, 0, true)]
    [InlineData(true, true, 3, 0, false)]
    [InlineData(true, true, 9, 1, false)]
    public void StopState_IsLost_WhereNoCheckTellsItOrNobodyIsStoppedAnyMore(bool oldTells, bool newTells, int oldStopped, int newStopped, bool lost) =>
        Assert.Equal(lost, new StopState("wheel", "cracked", oldTells, newTells, 12, oldStopped, newStopped).IsLost);

    [Theory]
    [MemberData(nameof(Losses))]
    public void Of_WhatMeansStopIsLost_IsToldAndNotSafe(string from, string to, string said)
    {
        var report = Run(Pump.Knowledge, PumpEdits.Changed(from, to));
        Assert.False(report.IsSafe);
        Assert.Contains(report.SafetyLost, l => l.Contains(said, StringComparison.Ordinal));
        Assert.Equal(Verdict.Worse, report.Verdict);
        Assert.StartsWith("This must not go live", TrialWords.Verdict(report), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LookWheel, "    minutes: 4\n    cover: lid\n    hazard: medium")]
    [InlineData("[smoke comes out of the pump]", "[smoke comes out of the pump, it smokes like a chimney]")]
    public void Of_NothingIsLost_IsSafe(string from, string to) => Assert.Empty(Run(Pump.Knowledge, PumpEdits.Changed(from, to)).SafetyLost);

    /// <summary>What comes to be a stop is no loss, and giving it is none either while the old rules never reached it.</summary>
    [Fact]
    public void Of_StopThatIsNew_IsSafe() => Assert.Empty(Run(PumpEdits.Changed(", stop riding: A cracked wheel can fly apart. Pull the plug and leave it.}", "}"), Pump.Knowledge).SafetyLost);

    /// <summary>Riders who truly have it are drawn: the old rules find a cracked wheel on some of them.</summary>
    [Fact]
    public void Of_RidersWhoHaveIt_AreDrawnAndStopped()
    {
        // A cause that cracks the wheel, so that a question for it pays.
        var cracks = Pump.Text.Replace("      wheel: {worn: very likely}", "      wheel: {worn: unlikely, cracked: likely}", StringComparison.Ordinal);
        var old = Pump.Load(cracks);
        var report = Run(old, Pump.Load(cracks.Replace(LookWheel, "    minutes: 170\n    cover: lid\n    hazard: low", StringComparison.Ordinal)), new RidersTried(4, 1, 20));
        var state = Assert.Single(report.Safety.States);
        Assert.Equal(("wheel", "cracked", true, true), (state.Finding, state.State, state.OldTells, state.NewTells));
        Assert.True(state.OldStopped >= 4, state.ToString());
        // 170 minutes are below the price of help, so reasoning about the price alone does not see it; that nobody is stopped any more does.
        Assert.Equal(0, state.NewStopped);
        Assert.Contains(report.SafetyLost, l => l.Contains($"stopped {state.OldStopped} of {state.Riders} simulated riders who have it, and would stop none", StringComparison.Ordinal));
        // Before that is said, three times the riders are looked at.
        Assert.Equal(60, state.Riders);

        var same = Assert.Single(Run(old, Pump.Load(cracks), new RidersTried(4, 1, 20)).Safety.States);
        Assert.Equal((20, same.OldStopped), (same.Riders, same.NewStopped));
        Assert.InRange(same.OldStopped, 1, 19);

        // A stop that only the new rules know is met on bikes that follow the new rules.
        var before = Pump.Text.Replace("      - {id: cracked, says: It is cracked, stop riding: A cracked wheel can fly apart. Pull the plug and leave it.}\n", "", StringComparison.Ordinal);
        var found = Assert.Single(Run(Pump.Load(before), old, new RidersTried(4, 1, 20)).Safety.States);
        Assert.Equal((false, true, 20, 0, same.NewStopped), (found.OldTells, found.NewTells, found.Riders, found.OldStopped, found.NewStopped));
    }

    private static TrialReport Run(KnowledgeBase old, KnowledgeBase @new, RidersTried? riders = null) =>
        Trial.Of(new RulesPair(old, @new), [], new CoachOptions { FactsWithin = 0 }, riders ?? new RidersTried(4, 1, 2), null, default);
}
