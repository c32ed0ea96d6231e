using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Learning.Proving;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Compiling;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Learning.Proving;

/// <summary>
/// What a case gains by learnt numbers is reckoned from what was kept of it, so that hundreds of numbers can be tried on a thousand cases. Here it is held against
/// the whole way round: the rules compiled anew with what was learnt laid over them, and the case weighed by both.
/// </summary>
public class GainTests
{
    private static readonly LearningLimits Limits = new(LeastCases: 1, LeastMembers: 1);

    private static readonly ClosedCase Story = Case(
        1, "m1", CasePhase.Solved, Has("no-water"), Said("feel-hose", "kinked"), Failed("straighten-hose"), Said("look-wheel", "worn"), Said("feel-hose", "straight"), Held("new-wheel"));

    private static readonly ClosedCase Other = Case(2, "m2", CasePhase.Solved, Has("no-water"), Said("feel-hose", "kinked"), Said("ask-tap", "open"), Held("straighten-hose"));

    [Fact]
    public void Odds_Gain_IsThatOfTheRulesLearnt()
    {
        var learnt = Learnt.Of([new("wheel-worn", 2.5), new("tap-shut", 0.5)], [], []);

        Same(learnt, (rules, folds) =>
        {
            var kind = new OddsLearning(rules, Limits, folds, _ => true, _ => true);
            return (kind, [.. rules.Model.Faults.Select(f => learnt.TimesOf(f.Id))]);
        });
    }

    /// <summary>Two links, one of a finding with two states beside the normal one.</summary>
    [Fact]
    public void Links_Gain_IsThatOfTheRulesLearnt()
    {
        var learnt = Learnt.Of([], [new("hose-kinked", "hose", "kinked", 0.7), new("wheel-worn", "wheel", "worn", 0.6)], []);

        Same(learnt, (rules, folds) =>
        {
            var kind = new LinkLearning(rules, Limits, new SafetyLimits(Pump.Knowledge), f => new PartsCount(rules, folds, f, OddsCount.Ones(rules.Faults)), _ => true);
            return (kind, [.. kind.Targets.Select((t, at) => learnt.ChanceOf(t.Fault, t.Finding, t.State) ?? kind.Unlearnt[at])]);
        });
    }

    [Fact]
    public void Mends_Gain_IsThatOfTheRulesLearnt()
    {
        var learnt = Learnt.Of([], [], [new("straighten-hose", "hose-kinked", 0.5), new("new-wheel", "wheel-worn", 0.97)]);

        Same(learnt, (rules, folds) =>
        {
            var kind = new MendLearning(rules, Limits, f => new PartsCount(rules, folds, f, OddsCount.Ones(rules.Faults)), _ => true);
            return (kind, [.. kind.Targets.Select((t, at) => learnt.MendsOf(t.Repair, t.Fault) ?? kind.Unlearnt[at])]);
        });
    }

    private static void Same(Learnt learnt, Func<RuleSheet, CaseFolds, (ILearnable Kind, double[] Numbers)> make)
    {
        var (rules, with) = (new RuleSheet(Pump.Knowledge), new RuleSheet(Pump.Load(learnt: learnt)));
        var (weigher, anew) = (CaseWeigher.AsCoach(rules), CaseWeigher.AsCoach(with));
        var stories = new[] { Story, Other }.Select(c => StoryReader.Read(c, Pump.Knowledge)!).ToList();
        var folds = new CaseFolds([.. stories.Select((s, i) => weigher.Weigh(s, i, 1))]);
        var (kind, numbers) = make(rules, folds);
        var gain = kind.Gain(numbers, CaseFolds.None);
        var whole = stories.Zip(folds.Cases, (story, weighed) => LogChance(anew.Weigh(story, 0, 1)) - LogChance(weighed)).ToList();

        Assert.Contains(whole, w => Math.Abs(w) > 0.1);
        Assert.Equal(whole, folds.Cases.Select(gain), (a, b) => Math.Abs(a - b) < 1e-3);

        static double LogChance(WeighedCase c) => Math.Log(c.Told.Weights.Sum() / c.Opened.Weights.Sum());
    }
}
