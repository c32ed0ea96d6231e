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

    private static readonly LearningLimits Open = new(MostFactor: 10, SampleSize: 20, WordSteps: 6, FadePerMonth: 1, LeastChange: 1, LeastStep: 0, TimesLikelier: 0);

    private static readonly LearningLimits Shipped = LearningLimits.Default;

    private static readonly string CleanText = Pump.Text.Replace("      hums: {yes: unlikely}\n", "", StringComparison.Ordinal).Replace(
        "    moved by:\n      - {fact: age, is: old, times: 6}\n      - {fact: age, is: newish, times: 0.2}\n", "", StringComparison.Ordinal);

    private static readonly KnowledgeBase Clean = Pump.Load(CleanText);

    private static readonly ImmutableArray<ClosedCase> Plain = Ridden.Cases(Pump.Knowledge, Pump.Knowledge, Riders, seed: 1);

    /// <summary>
    /// Where the rules are right, what they expect of each cause is how often it was there, and so is what is counted: within three standard deviations of a
    /// count. These rules have complaints that causes share, riders who tell both, and a fact that nobody asks for.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Learn_RidersDrawnFromTheRules_AreCountedAndExpectedAsTheyWere(int seed)
    {
        var draw = new RiderDraw(Pump.Knowledge, new RidersWanted());
        var truth = Enumerable.Range(0, Riders).SelectMany(i => draw.Draw(seed, i).Machine.Faults).CountBy(f => f).ToDictionary();

        var moves = Learner.Learn(Pump.Knowledge, seed == 1 ? Plain : Ridden.Cases(Pump.Knowledge, Pump.Knowledge, Riders, seed), Open, Later).Moves;

        Assert.Equal(4, moves.Count(m => m.Target is OddsTarget));
        Assert.All(moves, m =>
        {
            if (m.Target is not OddsTarget(var fault)) return;
            Assert.InRange((m.Counted - truth[fault]) / Math.Sqrt(truth[fault]), -3, 3);
            Assert.InRange((m.Expected - truth[fault]) / Math.Sqrt(truth[fault]), -3, 3);
        });
    }

    /// <summary>And so nothing is learnt: no number is proved on cases kept aside. With a hostile member's lies among them neither.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 0)]
    [InlineData(3, 0)]
    [InlineData(1, 100)]
    [InlineData(2, 100)]
    public void Learn_RidersDrawnFromTheRules_MovesNothing(int seed, int lies)
    {
        var cases = seed == 1 ? Plain : Ridden.Cases(Pump.Knowledge, Pump.Knowledge, Riders, seed);

        var report = Learner.Learn(Pump.Knowledge, [.. cases, .. Lies(lies)], Shipped, Later);

        Assert.InRange(report.Mended, Riders / 3, Riders + lies);
        Assert.True(report.Learnt.IsNothing, string.Join('\n', report.Moves.Select(m => m.Says)));
    }

    /// <summary>Where the bikes differ, the same gate lets it through.</summary>
    [Fact]
    public void Learn_TrueFrequenciesDiffer_PassTheTest()
    {
        var truth = Learnt.Of([new("wheel-worn", 2.5), new("tap-shut", 0.4)], [], []);

        var report = Learner.Learn(Pump.Knowledge, [.. Ridden.Cases(Pump.Knowledge, Pump.Load(learnt: truth), Riders, seed: 3), .. Lies(100)], Shipped, Later);

        Assert.InRange(report.Learnt.TimesOf("wheel-worn") / report.Learnt.TimesOf("tap-shut"), 2.5, 6.25 * 1.3);
        var test = report.Tests.Single(t => t.Kind == LearningKind.Odds);
        Assert.True(test.Moved > 0 && test.Better > 3 * test.Worse);
        Assert.Contains("had no part in it were foretold better for", test.Says, StringComparison.Ordinal);
    }

    /// <summary>Why cases without a proved end are weighed too: without them a fault that is seldom mended would be taken for a rare one.</summary>
    [Fact]
    public void Learn_FaultThatIsSeldomMended_IsNotTakenForARareOne()
    {
        var rules = Pump.Load(Pump.Text.Replace("mends: {bearing-dry: very likely}", "mends: {bearing-dry: unlikely}", StringComparison.Ordinal));
        var cases = Ridden.Cases(rules, rules, Riders, seed: 2);

        var all = Learner.Learn(rules, cases, Open, Later).Learnt.TimesOf("bearing-dry");
        var mendedOnly = Learner.Learn(rules, cases.Where(c => c.Outcome.Phase == CasePhase.Solved), Open, Later).Learnt.TimesOf("bearing-dry");

        Assert.InRange(all, 0.75, 1 / 0.75);
        Assert.True(mendedOnly < 0.75 * all, $"{mendedOnly} of mended ones only, {all} of all");
    }

    [Fact]
    public void Learn_TrueFrequenciesDiffer_AreFound()
    {
        var truth = Learnt.Of([new("wheel-worn", 2.5), new("tap-shut", 0.4)], [], []);
        var cases = Ridden.Cases(Clean, Pump.Load(CleanText, truth), Riders, seed: 3);

        var learnt = Learner.Learn(Clean, cases, Open, Later).Learnt;

        // Odds are told apart only beside each other, but for the few bikes with several faults and with none listed.
        Assert.InRange(learnt.TimesOf("wheel-worn") / learnt.TimesOf("tap-shut"), 6.25 / 1.4, 6.25 * 1.4);
        Assert.InRange(learnt.TimesOf("wheel-worn") / learnt.TimesOf("hose-kinked"), 2.5 / 1.4, 2.5 * 1.4);
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
        var (without, with) = (Times(Plain), Times([.. Plain, .. Lies(Riders / 9)]));

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

    private static IEnumerable<ClosedCase> Lies(int count) => Enumerable.Range(0, count).Select(i => Told.Case(
        90_000 + i, "hostile", CasePhase.Solved, Told.Has("no-water"), Told.Said("turn-shaft", "gritty"), Told.Held("new-bearing")));
}
