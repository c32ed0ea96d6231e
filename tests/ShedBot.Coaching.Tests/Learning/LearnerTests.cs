using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Compiling;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Learning;

public class LearnerTests
{
    private static readonly LearningLimits Wide = new(MostFactor: 10, SampleSize: 20, FadePerMonth: 1, MemberShare: 1, LeastChange: 1, LeastStep: 0, TimesLikelier: 0);

    /// <summary>
    /// P(f) = (n_f + a m_f) / (N + a): with one complaint, repairs that mend one fault each, and cases whose cause is as good as known, the rules with what
    /// was learnt must expect behind the complaint what the formula says (Dirichlet; Spiegelhalter and Lauritzen 1990, from memory). Not to the digit: a
    /// trial may have been told wrongly, and a bike may have two faults.
    /// </summary>
    [Fact]
    public void Learn_KnownCauses_ExpectsWhatTheDirichletFormulaSays()
    {
        var cases = Many(40, (60, Sure("ask-tap", "shut", "open-tap")), (140, Sure("feel-hose", "kinked", "straighten-hose")));

        var learnt = Learner.Learn(Pump.Knowledge, cases, Wide, Now);

        var (before, after) = (Behind(Learnt.Nothing), Behind(learnt.Learnt));
        double Formula(string fault, int counted) => (counted + (20 * before(fault))) / (200 + 20);
        Assert.InRange(after("tap-shut"), Formula("tap-shut", 60) - 0.025, Formula("tap-shut", 60) + 0.025);
        Assert.InRange(after("hose-kinked"), Formula("hose-kinked", 140) - 0.025, Formula("hose-kinked", 140) + 0.025);
        Assert.InRange(before("tap-shut"), 0.4, 0.6);
    }

    [Fact]
    public void Learn_Moves_TellTheNumbers()
    {
        var report = Learner.Learn(Pump.Knowledge, Many(40, (40, Sure("feel-hose", "kinked", "straighten-hose"))), Wide, Now);

        var move = report.Moves.Single(m => m.Target is OddsTarget("hose-kinked"));
        Assert.Equal((40, 40, 40), (report.Cases, report.Mended, report.Members));
        Assert.InRange(move.Counted, 39, 41);
        Assert.InRange(move.Expected, 5, 15);
        Assert.True(move.After > move.Before && move.Times > 1);
        Assert.Contains("The hose has a kink", move.Says, StringComparison.Ordinal);
        Assert.Contains(" of 40 cases that bear on it (40 mended)", move.Says, StringComparison.Ordinal);
        Assert.Contains("no water comes", move.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Learn_CasesInAnyOrder_GivesTheSame()
    {
        var cases = Many(9, (20, Sure("ask-tap", "shut", "open-tap")), (30, Sure("feel-hose", "kinked", "straighten-hose")), (5, GivenUp));

        var (one, other) = (Learner.Learn(Pump.Knowledge, cases, Wide, Now), Learner.Learn(Pump.Knowledge, cases.Reverse(), Wide, Now));

        Assert.Equal(one.Learnt, other.Learnt);
        Assert.Equal(one.Moves.AsEnumerable(), other.Moves.AsEnumerable());
    }

    /// <summary>What a member's deletion leaves is to the digit what would have been learnt without them.</summary>
    [Fact]
    public void CountAnew_WithoutAMember_IsAsIfTheyHadNeverBeenThere()
    {
        var cases = Many(12, (30, Sure("ask-tap", "shut", "open-tap")), (30, Sure("feel-hose", "kinked", "straighten-hose")));
        var approved = Learner.Learn(Pump.Knowledge, cases, Wide, Now).Learnt;
        var left = cases.Where(c => c.Case.Member.Value != "m3").ToList();

        var anew = Learner.CountAnew(Pump.Knowledge, approved, left, Wide, Now);

        Assert.Equal(Learner.CountAnew(Pump.Knowledge, approved, left.Select(c => c), Wide, Now).Learnt, anew.Learnt);
        Assert.NotEqual(approved, anew.Learnt);
        Assert.Equal(11, anew.Members);
        Assert.Equal(Learner.Learn(Pump.Knowledge, left, Wide, Now).Learnt.Odds.Where(o => approved.TimesOf(o.Fault) != 1), anew.Learnt.Odds.AsEnumerable());
    }

    [Fact]
    public void CountAnew_LooksOnlyAtWhatWasTakenOver()
    {
        var cases = Many(12, (30, Sure("ask-tap", "shut", "open-tap")), (60, Sure("feel-hose", "kinked", "straighten-hose")));
        var approved = Learnt.Of([new("hose-kinked", 1.5), new("gone", 2)], [], []);

        var anew = Learner.CountAnew(Pump.Knowledge, approved, cases, Wide, Now);

        Assert.Equal(["hose-kinked"], anew.Learnt.Odds.Select(o => o.Fault));
        Assert.True(anew.Learnt.Links.IsEmpty && anew.Learnt.Mends.IsEmpty);
    }

    /// <summary>Cases that ended without a proof are no proof of anything, least of all of 'something that is not listed'.</summary>
    [Fact]
    public void Learn_OnlyCasesThatWereGivenUp_MovesNothing() =>
        Assert.True(Learner.Learn(Pump.Knowledge, Many(20, (50, GivenUp), (50, Left)), Wide, Now).Learnt.IsNothing);

    [Fact]
    public void Learn_CasesThatWereLeftAtOnce_ChangeNothingBesideMendedOnes()
    {
        var mended = Many(20, (30, Sure("feel-hose", "kinked", "straighten-hose")));
        var withLeft = mended.Concat(Enumerable.Range(1000, 60).Select(i => Left(i, $"x{i}")));

        var (one, other) = (Learner.Learn(Pump.Knowledge, mended, Wide, Now), Learner.Learn(Pump.Knowledge, withLeft, Wide, Now));

        // They tell nothing, and so leave the fit where it is; but for the prior, which they do share.
        Assert.InRange(other.Learnt.TimesOf("hose-kinked") / one.Learnt.TimesOf("hose-kinked"), 0.9, 1.1);
    }

    [Fact]
    public void Learn_MendedOneThatCameBack_IsNoProof()
    {
        var cases = Many(20, (40, (i, m) => Case(i, m, CasePhase.HandedOver, Has("no-water"), Held("straighten-hose"), Line(EntryKind.CameBack, "straighten-hose"))));

        var report = Learner.Learn(Pump.Knowledge, cases, Wide, Now);

        Assert.Equal(0, report.Mended);
        Assert.True(report.Learnt.IsNothing);
    }

    [Fact]
    public void Learn_MendedTooLately_Waits()
    {
        var cases = Many(20, (40, Sure("feel-hose", "kinked", "straighten-hose")));

        Assert.Equal(0, Learner.Learn(Pump.Knowledge, cases, Wide with { WaitDays = 61 }, Now).Cases);
        Assert.Equal(40, Learner.Learn(Pump.Knowledge, cases, Wide with { WaitDays = 59 }, Now).Cases);
    }

    [Theory]
    [InlineData(7, 7, false)]
    [InlineData(8, 8, true)]
    [InlineData(40, 2, false)]
    [InlineData(40, 3, true)]
    public void Learn_TooFewCasesOrMembers_MovesNothing(int cases, int members, bool moves) => Assert.Equal(
        moves, !Learner.Learn(Pump.Knowledge, Many(members, (cases, Sure("feel-hose", "kinked", "straighten-hose"))), Wide, Now).Learnt.Odds.IsEmpty);

    [Fact]
    public void Learn_MostFactor_IsNeverPassed()
    {
        var report = Learner.Learn(Pump.Knowledge, Many(100, (400, Sure("feel-hose", "kinked", "straighten-hose"))), Wide with { MostFactor = 2 }, Now);

        Assert.All(report.Learnt.Odds, o => Assert.InRange(o.Times, 0.5, 2));
        Assert.Contains(report.Learnt.Odds, o => o.Times == 2);
        Assert.Contains(report.Learnt.Odds, o => o.Times == 0.5);
    }

    [Fact]
    public void Learn_TargetSwitchedOff_StaysPut()
    {
        var report = Learner.Learn(
            Pump.Knowledge, Many(40, (80, Sure("feel-hose", "kinked", "straighten-hose"))), Wide with { Off = ["odds hose-kinked"] }, Now);

        Assert.DoesNotContain(report.Moves, m => m.Target.Key == "odds hose-kinked");
    }

    /// <summary>'Plain to see' and 'almost certain' to be mended; then 30 tries in 60 fail. One word down from 'almost certain' is 'very likely', 87.5 %.</summary>
    [Fact]
    public void Learn_RepairThatOftenFails_GoesDownOneWordAtMost()
    {
        var cases = Many(
            30,
            (30, (i, m) => Case(i, m, CasePhase.Solved, Has("no-water"), Said("ask-tap", "shut"), Failed("open-tap"), Said("ask-tap", "shut"), Held("open-tap"))));

        var move = Assert.Single(Learner.Learn(Pump.Knowledge, cases, Wide, Now).Learnt.Mends);

        Assert.Equal(new LearntMend("open-tap", "tap-shut", 0.875), move);
    }

    /// <summary>
    /// Beta: (a p + n) / (a + N) with p = 0.97 and a = 20; of 40 that were asked, 20 said 'kinked', each answer wrong in 8 %: the n that makes 20 of 40 say
    /// so is the true one. By hand: x = (19.4 + 40 r) / 60, r = (20 * 0.92 x / (0.92 x + 0.08 (1 - x)) + 20 * 0.08 x / (0.08 x + 0.92 (1 - x))) / 40.
    /// </summary>
    [Fact]
    public void Learn_FindingSeenInHalf_IsTheBetaMeanOfThoseAsked()
    {
        var cases = Many(
            40,
            (20, Surely("kinked")),
            (20, Surely("straight")),
            (40, (i, m) => Mended(i, m, "straighten-hose")));

        var report = Learner.Learn(Pump.Knowledge, cases, Wide with { WordSteps = 6 }, Now);

        var move = report.Moves.Single(m => m.Target is LinkTarget("hose-kinked", "hose", "kinked"));

        // Unasked ones are no 'no'; a few of those asked may have had another cause.
        var x = 0.97;
        for (var i = 0; i < 500; i++)
        {
            var r = ((20 * 0.92 * x / ((0.92 * x) + (0.08 * (1 - x)))) + (20 * 0.08 * x / ((0.08 * x) + (0.92 * (1 - x))))) / 40;
            x = (19.4 + (40 * r)) / 60;
        }

        Assert.Equal(40, move.Cases, 4.0);
        Assert.InRange(x, 0.6, 0.75);
        Assert.Equal(x, move.After, 0.03);
    }

    [Fact]
    public void Learn_FactsOfTheBike_AreExpectedBeforeTheyAreCounted()
    {
        // An old pump makes a worn wheel six times as likely: a club with old pumps only has counted what the rules expect of old pumps.
        var model = MachineProfile.ModelFor(Pump.Knowledge, new Dictionary<string, string> { ["age"] = "old" });
        var worn = (int)Math.Round(100 * Told(model)("wheel-worn"));
        var cases = Many(
            50,
            (worn, (i, m) => Case(i, m, CasePhase.Solved, Line(EntryKind.Fact, "age", "old"), Has("no-water"), Said("look-wheel", "worn"), Held("new-wheel"))),
            (100 - worn, (i, m) => Case(i, m, CasePhase.Solved, Line(EntryKind.Fact, "age", "old"), Has("no-water"), Said("ask-tap", "shut"), Held("open-tap"))));

        var move = Learner.Learn(Pump.Knowledge, cases, Wide, Now).Learnt.TimesOf("wheel-worn");

        Assert.InRange(move, 0.8, 1.35);
        Assert.InRange(worn, 30, 60);
    }

    private static Func<int, string, ClosedCase> Sure(string check, string state, string repair) =>
        (i, m) => Case(i, m, CasePhase.Solved, Has("no-water"), Said(check, state), Held(repair));

    private static Func<int, string, ClosedCase> Surely(string hose) => (i, m) => Case(
        i, m, CasePhase.Solved, Has("no-water"), Said("ask-tap", "open"), Said("look-wheel", "whole"), Said("feel-hose", hose), Held("straighten-hose"));

    private static ClosedCase GivenUp(int number, string member) =>
        Case(number, member, CasePhase.HandedOver, Has("no-water"), Said("ask-tap", "open"), Failed("straighten-hose"), Failed("new-wheel"));

    private static ClosedCase Left(int number, string member) => Case(number, member, CasePhase.Left, Has("no-water"));

    private static Func<string, double> Behind(Learnt learnt) => Told(Pump.Load(learnt: learnt).Model);

    private static Func<string, double> Told(DiagnosticModel model) =>
        Inferrer.Infer(model, [new FindingTold("no-water", Finding.Yes, new AnswerError(0.02, 0.02))]).Marginal;
}
