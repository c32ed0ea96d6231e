using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>
/// What is learnt from simulated owners against the frequencies that they were drawn from. The riders are drawn by the rules of the simulation, which share
/// no code with the counting. Bounds are three standard deviations of a count that was shared out: ln t has about 1.2 / sqrt(n).
/// </summary>
public class LearningFromRidersTests
{
    private const int Riders = 900;

    private static readonly DateTimeOffset Later = Pump.Noon.AddDays(60);

    private static readonly LearningLimits Open = new(MostFactor: 10, SampleSize: 20, WordSteps: 6, FadePerMonth: 1, LeastChange: 1, LeastStep: 0);

    private static readonly string CleanText = Pump.Text.Replace("      hums: {yes: unlikely}\n", "", StringComparison.Ordinal).Replace(
        "    moved by:\n      - {fact: age, is: old, times: 6}\n      - {fact: age, is: newish, times: 0.2}\n", "", StringComparison.Ordinal);

    private static readonly KnowledgeBase Clean = Pump.Load(CleanText);

    private static readonly ImmutableArray<ClosedCase> Plain = Ridden.Cases(Pump.Knowledge, Pump.Knowledge, Riders, seed: 1);

    /// <summary>
    /// Where the rules are right in every respect nothing moves. These rules have no complaints that one cause shares (owners tell all they have, so that
    /// silence tells something) and no facts of the pump that nobody asks: in both the rules as they stand expect something else than what is drawn.
    /// </summary>
    [Fact]
    public void Learn_RidersDrawnFromTheRules_DriftsNowhere()
    {
        var report = Learner.Learn(Clean, Ridden.Cases(Clean, Clean, Riders, seed: 1), Open, Later);

        Assert.InRange(report.Mended, Riders / 3, Riders);
        // Of a cause that is as good as alone behind its complaint the odds are hardly told; its chance is.
        Assert.All(report.Moves, m => Assert.InRange(Math.Abs(m.After - m.Before), 0, m.Target is OddsTarget ? 0.06 : 0.12));
    }

    /// <summary>What is counted of each cause is how often it was truly there, within four standard deviations of a binomial count and what is shared out wrongly.</summary>
    [Fact]
    public void Learn_Counted_IsWhatWasTrulyThere()
    {
        var draw = new RiderDraw(Pump.Knowledge, new RidersWanted());
        var truth = Enumerable.Range(0, Riders).SelectMany(i => draw.Draw(1, i).Machine.Faults).CountBy(f => f).ToDictionary();

        var moves = Learner.Learn(Pump.Knowledge, Plain, Open, Later).Moves.Where(m => m.Target is OddsTarget).ToList();

        Assert.Equal(4, moves.Count);
        Assert.All(moves, m => Assert.InRange(
            m.Counted - truth[((OddsTarget)m.Target).Fault], -4 * Math.Sqrt(truth[((OddsTarget)m.Target).Fault]), 4 * Math.Sqrt(truth[((OddsTarget)m.Target).Fault])));
    }

    /// <summary>Why cases without a proved end are weighed too: without them a fault that is seldom mended would be taken for a rare one.</summary>
    [Fact]
    public void Learn_FaultThatIsSeldomMended_IsNotTakenForARareOne()
    {
        var rules = Pump.Load(Pump.Text.Replace("mends: {bearing-dry: very likely}", "mends: {bearing-dry: unlikely}", StringComparison.Ordinal));
        var cases = Ridden.Cases(rules, rules, Riders, seed: 2);

        var all = Learner.Learn(rules, cases, Open, Later).Learnt.TimesOf("bearing-dry");
        var mendedOnly = Learner.Learn(rules, cases.Where(c => c.Outcome.Phase == CasePhase.Solved), Open, Later).Learnt.TimesOf("bearing-dry");

        Assert.True(all >= 0.75, $"{all} of all");
        Assert.True(mendedOnly < 0.75 * all, $"{mendedOnly} of mended ones only, {all} of all");
    }

    [Fact]
    public void Learn_TrueFrequenciesDiffer_AreFound()
    {
        var truth = Learnt.Of([new("wheel-worn", 2.5), new("tap-shut", 0.4)], [], []);
        var cases = Ridden.Cases(Clean, Pump.Load(CleanText, truth), Riders, seed: 3);

        var learnt = Learner.Learn(Clean, cases, Open, Later).Learnt;

        // Odds are told apart only beside each other, but for the few bikes with several faults and with none listed.
        Assert.InRange(learnt.TimesOf("wheel-worn") / learnt.TimesOf("tap-shut"), 6.25 / 1.6, 6.25 * 1.6);
        Assert.InRange(learnt.TimesOf("wheel-worn") / learnt.TimesOf("hose-kinked"), 2.5 / 1.6, 2.5 * 1.6);
    }

    [Fact]
    public void Learn_TrueStrengthDiffers_IsFound()
    {
        var truth = Learnt.Of([], [new("bearing-dry", "bearing", "gritty", 0.5)], []);
        var cases = Ridden.Cases(Pump.Knowledge, Pump.Load(learnt: truth), Riders, seed: 4);

        var move = Learner.Learn(Pump.Knowledge, cases, Open, Later).Moves.SingleOrDefault(m => m.Target is LinkTarget("bearing-dry", "bearing", "gritty"));

        // From 87.5 % at least half of the way to the true 50 %: the prior counts, and who had this cause is itself read through the old strength.
        Assert.NotNull(move);
        Assert.InRange(move.After, 0.45, 0.6875);
    }

    /// <summary>Every tenth case is made up by one member, who blames the bearing each time.</summary>
    [Fact]
    public void Learn_OneHostileMember_MovesNoOddsByAQuarter()
    {
        var lies = Enumerable.Range(0, Riders / 9).Select(i => Told.Case(
            90_000 + i, "hostile", CasePhase.Solved, Told.Has("no-water"), Told.Said("turn-shaft", "gritty"), Told.Held("new-bearing")));

        var (without, with) = (Times(Plain), Times([.. Plain, .. lies]));

        Assert.All(Pump.Knowledge.Faults.Keys, f => Assert.InRange(with.TimesOf(f) / without.TimesOf(f), 0.8, 1.25));
        Assert.All(with.Links, l => Assert.InRange(l.Chance - (without.ChanceOf(l.Fault, l.Finding, l.State) ?? l.Chance), -0.05, 0.05));

        static Learnt Times(ImmutableArray<ClosedCase> cases) => Learner.Learn(Pump.Knowledge, cases, Open, Later).Learnt;
    }

    [Fact]
    public void Learn_HostileMemberAlone_MovesNothing()
    {
        var lies = Enumerable.Range(0, 200).Select(i => Told.Mended(i, "hostile", "new-bearing"));

        Assert.True(Learner.Learn(Pump.Knowledge, lies, Open with { LeastMembers = 2 }, Later).Learnt.IsNothing);
    }

    /// <summary>Forgotten is as never having been there: with random members taken out, what is counted is what the others alone give.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(17)]
    public void Learn_AfterAMembersDeletion_KnowsNothingOfThem(int member)
    {
        var left = Plain.Where(c => c.Case.Member.Value != $"m{member}").ToImmutableArray();
        var never = Ridden.Cases(Pump.Knowledge, Pump.Knowledge, Riders, seed: 1).Where(c => c.Case.Member.Value != $"m{member}");

        Assert.Equal(Learner.Learn(Pump.Knowledge, never, Open, Later).Learnt, Learner.Learn(Pump.Knowledge, left, Open, Later).Learnt);
        Assert.NotEqual(Learner.Learn(Pump.Knowledge, Plain, Open, Later).Learnt, Learner.Learn(Pump.Knowledge, left, Open, Later).Learnt);
    }

    /// <summary>A stop for safety never becomes rarer by counting, however the counts fall.</summary>
    [Fact]
    public void Learn_WhatMeansStop_IsNeverLearntDown()
    {
        var rules = Pump.Load(Pump.Text.Replace("wheel: {worn: very likely}", "wheel: {cracked: likely, worn: unlikely}", StringComparison.Ordinal));
        var cases = Told.Many(
            40,
            (80, (i, m) => Told.Case(i, m, CasePhase.Solved, Told.Has("no-water"), Told.Said("look-wheel", "whole"), Told.Held("new-wheel"))),
            (200, (i, m) => Told.Case(i, m, CasePhase.Solved, Told.Has("no-water"), Told.Said("ask-tap", "shut"), Told.Held("open-tap"))));

        var learnt = Learner.Learn(rules, cases, Open, Told.Now).Learnt;

        Assert.True(learnt.TimesOf("wheel-worn") >= 1);
        Assert.DoesNotContain(learnt.Links, l => l.Finding == "wheel" && (l.State != "cracked" || l.Chance < 0.675));
        Assert.NotEmpty(learnt.Odds);
        Assert.True(Cracked(rules, learnt) >= Cracked(rules, Learnt.Nothing));

        static double Cracked(KnowledgeBase rules, Learnt learnt) => learnt.ChanceOf("wheel-worn", "wheel", "cracked") ?? (rules.Findings.ContainsKey("wheel") ? 0.675 : 0);
    }
}
