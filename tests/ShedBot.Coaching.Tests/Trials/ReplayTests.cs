using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Trials;

public class ReplayTests
{
    private static readonly CoachOptions Options = new() { FactsWithin = 0 };

    /// <summary>One change of each kind, and whether it can touch some cases (and not all), all of them or none.</summary>
    public static TheoryData<string, string, string> Changes => new()
    {
        { "      wheel: {worn: very likely}", "      wheel: {worn: unlikely}", "some" },
        { "    reliability: plain to see\n    cautions: [{word: WARNING", "    reliability: takes a practised eye\n    cautions: [{word: WARNING", "some" },
        { "    mends: {wheel-worn: very likely}", "    mends: {wheel-worn: unlikely}", "some" },
        { "{fact: age, is: old, times: 6}", "{fact: age, is: old, times: 2}", "some" },
        { "    keeps for days: 100", "    keeps for days: 1", "some" },
        { "      bearing: {gritty: very likely}", "      bearing: {gritty: very likely}\n      hose: {kinked: very unlikely}", "some" },
        { "      - {id: gritty, says: It is gritty}\n", "      - {id: gritty, says: It is gritty}\n    seen anyway: {gritty: very unlikely}\n", "some" },
        { "    how common: very common", "    how common: common", "all" },
        { "      - {id: whole, says: It is whole}", "      - {id: sound, says: It is whole}", "some" },
        { "      bearing: {gritty: very likely}\n", "      bearing: {gritty: very likely}\n    moved by:\n      - {fact: age, is: old, times: 3}\n", "some" },
        { "      no-water: {yes: very likely}\n", "      no-water: {yes: likely}\n", "some" },
        { "      hums: {yes: unlikely}\n      wheel", "      hums: {yes: likely}\n      wheel", "some" },
        { "    minutes: 3\n", "    minutes: 30\n", "none" },
        { "      - the pump runs dry\n", "      - the pump runs dry\n      - not a drop\n", "none" },
        { "    minutes: 6\n    tools: [screwdriver]", "    minutes: 60\n    tools: [screwdriver]", "none" },
    };

    /// <summary>The skip is exact: a case that is said to be untouched is believed alike under both rules to the last bit, at every point, by the full computation.</summary>
    [Theory]
    [MemberData(nameof(Changes))]
    public void Touches_CaseThatIsSkipped_IsBelievedAlikeToTheLastBit(string from, string to, string touches)
    {
        var rules = new RulesPair(Pump.Knowledge, PumpEdits.Changed(from, to));
        var difference = RuleDifference.Of(rules);
        var (skipped, touched, moved) = (0, 0, 0);
        foreach (var closed in MadeCases.Of(Pump.Knowledge, 200))
        {
            var alike = Moment.Of(closed).All(m => Beliefs(m, rules.Old).SequenceEqual(Beliefs(m, rules.New)));
            if (!difference.Touches(closed))
            {
                skipped++;
                Assert.True(alike, closed.Case.Id.Value);
            }
            else
            {
                touched++;
                if (!alike) moved++;
            }
        }

        Assert.Equal(touches, (skipped, touched) switch { (0, _) => "all", (_, 0) => "none", _ => "some" });
        Assert.Equal(touches != "none", moved > 0);
    }

    /// <summary>A cause that comes or goes moves every chance through the common scale, or through 'something else'.</summary>
    [Fact]
    public void Touches_NewCause_TouchesAll() => Assert.True(RuleDifference.Of(new RulesPair(Pump.Knowledge, PumpEdits.WithStrainer)).Everywhere);

    [Fact]
    public void Of_WithAndWithoutSkipping_IsTheSameReport()
    {
        var rules = new RulesPair(Pump.Knowledge, PumpEdits.Changed("      wheel: {worn: very likely}", "      wheel: {worn: unlikely}"));
        var cases = MadeCases.Of(Pump.Knowledge, 150);
        Assert.Equal(Text(new Replay(rules, Options).Of(cases, true, null, default)), Text(new Replay(rules, Options).Of(cases.Reverse(), false, null, default)));
    }

    [Fact]
    public void Of_IdenticalRules_IsExactlyNoDifference()
    {
        var part = Run(Pump.Knowledge, Pump.Load(), 60);
        Assert.Equal((60, 0, 0, Verdict.NoDifference), (part.Cases, part.Touched, part.Leads.Changed, part.Verdict));
        Assert.Equal(0, part.Next.Changed);
    }

    /// <summary>Wrong words for what shows as what: many cases lose their right cause, and the same the other way round is told as better.</summary>
    [Fact]
    public void Of_RulesMadeWorse_AreToldWorseAndTheOtherWayRoundBetter()
    {
        var spoilt = PumpEdits.Changed("      hose: {kinked: almost certain}", "      hose: {kinked: almost no chance}\n      tap: {shut: almost certain}");
        var cases = MadeCases.Of(Pump.Knowledge, 400);
        var (worse, better) = (Run(Pump.Knowledge, spoilt, cases), Run(spoilt, Pump.Knowledge, cases));
        Assert.Equal((Verdict.Worse, Verdict.Better), (worse.Verdict, better.Verdict));
        Assert.True(worse.Leads.FromTruth > 20 && worse.Leads.ToTruth < worse.Leads.FromTruth);
        Assert.Equal((worse.Leads.FromTruth, worse.Leads.ToTruth), (better.Leads.ToTruth, better.Leads.FromTruth));
        Assert.Equal(worse.Leads.Changed, better.Leads.Changed);
    }

    /// <summary>Held against beliefs that are worked out one by one: how many cases lead elsewhere.</summary>
    [Fact]
    public void Of_LeadsThatChange_AreThoseOfTheFullComputation()
    {
        var rules = new RulesPair(Pump.Knowledge, PumpEdits.Changed("      wheel: {worn: very likely}", "      wheel: {worn: very unlikely}"));
        var cases = MadeCases.Of(Pump.Knowledge, 200);
        var expected = cases.Select(c => Moment.Of(c)[1]).Count(m => Lead(m, rules.Old) != Lead(m, rules.New));
        var part = new Replay(rules, Options).Of(cases, true, null, default);
        Assert.True(expected > 3);
        Assert.Equal(expected, part.Leads.Changed);
        Assert.InRange(part.Leads.Commonest.Sum(s => s.Count), 1, expected);
    }

    /// <summary>Where no repair was shown, what leads at the end counts; and it is told of how many the cause never came out.</summary>
    [Fact]
    public void Of_LeadsWhereNoRepairWasShown_AreThoseOfTheEnd()
    {
        var rules = new RulesPair(Pump.Knowledge, PumpEdits.Changed("      wheel: {worn: very likely}", "      wheel: {worn: very unlikely}"));
        var cases = MadeCases.Of(Pump.Knowledge, 200).Select(c => c with
        {
            Case = c.Case with { Entries = [.. c.Case.Entries.Where(e => e.Kind is not (EntryKind.RepairShown or EntryKind.RepairHeld or EntryKind.RepairFailed or EntryKind.RepairBetter))] },
        }).ToList();
        var changed = cases.Where(c => Lead(Moment.Of(c)[^1], rules.Old) != Lead(Moment.Of(c)[^1], rules.New)).ToList();
        Assert.NotEqual(changed.Count, cases.Count(c => Lead(Moment.Of(c)[0], rules.Old) != Lead(Moment.Of(c)[0], rules.New)));
        var part = new Replay(rules, Options).Of(cases, true, null, default);
        Assert.Equal((changed.Count, changed.Count(c => c.Outcome.Causes.IsEmpty)), (part.Leads.Changed, part.Leads.Unknown));
        Assert.Equal(cases.Count(c => !c.Outcome.Causes.IsEmpty), part.Confirmed);
        Assert.NotEqual(part.Cases - part.Confirmed, part.Confirmed);
    }

    /// <summary>The repair that held is, under the new rules, also for a cause that the old ones do not list: which of the two it was nobody saw, so both count as right there.</summary>
    [Fact]
    public void Of_RepairThatIsForANewCauseToo_TakesBothForRight()
    {
        const string Mends = "    mends: {hose-kinked: very likely}";
        var @new = Pump.Load(PumpEdits.WithStrainerText.Replace(Mends, "    mends: {hose-kinked: very likely, strainer-blocked: likely, tap-shut: very unlikely}", StringComparison.Ordinal));
        var rules = new RulesPair(Pump.Knowledge, @new);
        var cases = MadeCases.Of(Pump.Knowledge, 200).Where(c => c.Outcome.Repair == "straighten-hose").ToList();
        Assert.True(cases.Count > 10);
        // The shut tap is known to the old rules, so that it was not told then stands.
        var expected = cases.Average(c => Judged.Of(@new, [.. Beliefs(Moment.Of(c)[0], @new)], ["hose-kinked", "strainer-blocked"]).Brier);
        var brier = new Replay(rules, Options).Of(cases, true, null, default).Points[0].Measures.Single(m => m.Measure == Measure.Brier);
        Assert.Equal(expected, brier.New, 9);
        Assert.Equal(cases.Average(c => Judged.Of(Pump.Knowledge, [.. Beliefs(Moment.Of(c)[0], Pump.Knowledge)], ["hose-kinked"]).Brier), brier.Old, 9);
    }

    /// <summary>Where the bike must be made safe before the next check, that check is what is told.</summary>
    [Fact]
    public void Of_NextStep_IsWhatComesAfterTheBikeIsMadeSafe()
    {
        var part = Run(Pump.Knowledge, PumpEdits.Changed("    minutes: 0.5\n", "    minutes: 170\n"), 40);
        Assert.Contains(part.Next.Commonest, s => s.Old == "check:ask-tap");
        Assert.All(part.Next.Commonest, s => Assert.NotEqual("helper:", s.New));
        Assert.Contains(part.Next.Commonest, s => s.New is "check:feel-hose" or "check:look-wheel" or "check:turn-shaft");
        Assert.InRange(part.Next.Changed, 1, part.Next.Cases);
        Assert.InRange(part.Next.Cases, part.Next.Situations, 40);
    }

    [Fact]
    public void Of_CaseWithoutAComplaint_IsLeftOutAndCounted()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 1)[0];
        var empty = closed with { Case = closed.Case with { Id = new CaseId("empty"), Entries = [] }, Outcome = closed.Outcome with { Causes = [] } };
        var part = Run(Pump.Knowledge, PumpEdits.WithStrainer, [closed, empty]);
        Assert.Equal((1, 1), (part.Cases, part.Unread));
    }

    /// <summary>Rules that know nothing of what a case talks about judge it from what is left.</summary>
    [Fact]
    public void Of_CaseAboutRetiredThings_IsJudgedFromTheRest()
    {
        var cases = MadeCases.Of(PumpEdits.WithStrainer, 80);
        Assert.Contains(cases, c => c.Case.Entries.Any(e => e.Subject == "look-strainer"));
        var part = Run(PumpEdits.WithStrainer, Pump.Knowledge, cases);
        Assert.Equal((80, 80, Verdict.Worse), (part.Cases, part.Touched, part.Verdict));
    }

    [Fact]
    public void Moments_OfACase_HoldWhatStoodByThen()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 100).First(c => c.Case.Standing.Count(e => e.Kind == EntryKind.RepairShown) == 2);
        var moments = Moment.Of(closed);
        Assert.Equal([TrialPoint.AfterComplaint, TrialPoint.BeforeRepair, TrialPoint.AtEnd], moments.Select(m => m.Point));
        Assert.All(moments[0].Case.Entries, e => Assert.Contains(e.Kind, new[] { EntryKind.Complaint, EntryKind.Denied }));
        Assert.Single(moments[1].Case.Entries, e => e.Kind == EntryKind.RepairShown);
        Assert.DoesNotContain(moments[1].Case.Entries, e => e.Kind is EntryKind.RepairFailed or EntryKind.RepairBetter or EntryKind.RepairHeld);
        Assert.Equal(closed.Case.Standing, moments[2].Case.Entries);
        Assert.Equal([closed.Case.Entries[0].At, moments[1].Case.Entries[^1].At, closed.Case.Entries[^1].At], moments.Select(m => m.At));
    }

    [Fact]
    public void Moments_OfACaseWithoutARepair_AreTwo()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 1)[0];
        var asked = closed with { Bike = null, Case = closed.Case with { Entries = [.. closed.Case.Entries.Where(e => e.Kind is not (EntryKind.RepairShown or EntryKind.RepairHeld or EntryKind.RepairFailed or EntryKind.RepairBetter))] } };
        var moments = Moment.Of(asked);
        Assert.Equal([TrialPoint.AfterComplaint, TrialPoint.AtEnd], moments.Select(m => m.Point));
        Assert.All(moments, m => Assert.Equal((closed.Case.Bike, closed.Case.Member, 0), (m.Bike.Id, m.Bike.Owner, m.Bike.Facts.Count)));
    }

    /// <summary>Each kind of entry, and the rule that it is evidence by.</summary>
    [Theory]
    [InlineData(EntryKind.Complaint, "findings", true)]
    [InlineData(EntryKind.Complaint, "named", true)]
    [InlineData(EntryKind.Denied, "findings", true)]
    [InlineData(EntryKind.Denied, "named", false)]
    [InlineData(EntryKind.Volunteered, "findings", true)]
    [InlineData(EntryKind.Volunteered, "checks", false)]
    [InlineData(EntryKind.Answer, "checks", true)]
    [InlineData(EntryKind.Answer, "findings", false)]
    [InlineData(EntryKind.RepairFailed, "repairs", true)]
    [InlineData(EntryKind.RepairBetter, "repairs", true)]
    [InlineData(EntryKind.CameBack, "repairs", true)]
    [InlineData(EntryKind.RepairHeld, "repairs", false)]
    [InlineData(EntryKind.RepairShown, "repairs", false)]
    [InlineData(EntryKind.Fact, "facts", true)]
    [InlineData(EntryKind.Fact, "findings", false)]
    [InlineData(EntryKind.NotSure, "checks", false)]
    public void Touches_EachKindOfEntry_ByTheRuleThatItIsEvidenceBy(EntryKind kind, string differs, bool touches)
    {
        var closed = MadeCases.Of(Pump.Knowledge, 1)[0];
        closed = closed with { Bike = null, Case = closed.Case with { Entries = [new CaseEntry(1, kind, "it", "so", 1, Pump.Noon)] } };
        Assert.Equal(touches, Differing(differs, "it").Touches(closed));
        Assert.Equal(differs == "named" && touches, Differing(differs, "another").Touches(closed));
    }

    [Fact]
    public void Touches_FactThatTheBikeIsKnownBy_IsTouched()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 40).First(c => c.Bike!.Facts.ContainsKey("age"));
        closed = closed with { Case = closed.Case with { Entries = [] } };
        Assert.True(Differing("facts", "age").Touches(closed));
        Assert.False(Differing("facts", "colour").Touches(closed));
        Assert.False(Differing("findings", "age").Touches(closed));
    }

    [Fact]
    public void Swaps_AlikeOnes_AreCountedTogetherMostOftenFirst()
    {
        var swaps = Swaps.Commonest([("a", "c", 1), ("b", "a", 1), ("c", "b", 2), ("c", "a", 2), ("a", "b", 2), ("a", "c", 4), ("a", "a", 1)], 5);
        Assert.Equal([new("a", "c", 5), new("a", "b", 2), new("c", "a", 2), new("c", "b", 2), new("a", "a", 1)], swaps.AsEnumerable());
    }

    /// <summary>What was learnt of the bike after a moment was not known at it.</summary>
    [Fact]
    public void Moments_FactLearntLater_IsNotKnownBefore()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 200).First(c => c.Bike!.Facts.Values.Any(f => f.Learnt > c.Case.Entries[0].At));
        var moments = Moment.Of(closed);
        Assert.Empty(moments[0].Bike.Facts);
        Assert.NotEmpty(moments[^1].Bike.Facts);
    }

    [Fact]
    public void Moments_FactLearntAtThatVeryMoment_IsKnown()
    {
        var closed = MadeCases.Of(Pump.Knowledge, 1)[0];
        var at = closed.Case.Entries[0].At;
        Moment First(DateTimeOffset learnt) =>
            Moment.Of(closed with { Bike = closed.Bike! with { Facts = closed.Bike!.Facts.Clear().Add("age", new BikeFact("old", learnt, "told")) } })[0];
        Assert.NotEmpty(First(at).Bike.Facts);
        Assert.Empty(First(at.AddTicks(1)).Bike.Facts);
    }

    /// <summary>At the end all is known, whatever the rules: that counts for nothing, and all before does.</summary>
    [Theory]
    [InlineData(TrialPoint.AfterComplaint, Measure.Brier, Verdict.Worse)]
    [InlineData(TrialPoint.BeforeRepair, Measure.RightLead, Verdict.Better)]
    [InlineData(TrialPoint.BeforeRepair, Measure.Log, Verdict.NoDifference)]
    [InlineData(TrialPoint.AtEnd, Measure.Brier, Verdict.NoDifference)]
    public void Verdict_OfAPoint_CountsBeforeTheEndOnly(TrialPoint at, Measure measure, Verdict verdict)
    {
        var compared = new Compared(measure, 100, 100, 0.2, 0.5, 0.2, 0.4);
        Assert.Equal(verdict, (ReplayPart.None with { Points = [new ReplayPoint(at, [compared])] }).Verdict);
    }

    private static RuleDifference Differing(string what, string id) => new(
        false,
        what == "named",
        what == "findings" ? [id] : [],
        what == "checks" ? [id] : [],
        what == "repairs" ? [id] : [],
        what == "facts" ? [id] : []);

    private static ReplayPart Run(KnowledgeBase old, KnowledgeBase @new, int cases) => Run(old, @new, MadeCases.Of(old, cases));

    private static ReplayPart Run(KnowledgeBase old, KnowledgeBase @new, IEnumerable<ClosedCase> cases) => Trial.Replay(new RulesPair(old, @new), cases, Options, null, default);

    private static IEnumerable<double> Beliefs(Moment moment, KnowledgeBase knowledge)
    {
        var belief = CaseBelief.Of(moment.Case, moment.Bike, knowledge, moment.At);
        return belief.Model.Faults.Select((_, i) => belief.Marginal(i));
    }

    private static string Lead(Moment moment, KnowledgeBase knowledge)
    {
        var belief = CaseBelief.Of(moment.Case, moment.Bike, knowledge, moment.At);
        return belief.Model.Faults.MaxBy(f => Math.Round(belief.Marginal(f.Id), 10))!.Id;
    }

    private static string Text(ReplayPart part) => TrialReportJson.Write(new TrialReport("a", "b", new TrialScope([], [], [], [], [], false, false), part, [], ShedBot.Coaching.Trials.Safety.SafetyPart.None));
}
