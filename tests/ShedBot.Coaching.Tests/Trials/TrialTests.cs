using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Tests.Trials;

public class TrialTests
{
    private static readonly CoachOptions Options = new() { FactsWithin = 0 };
    private static readonly RidersTried Few = new(60, 1, 4);

    [Fact]
    public void Of_IdenticalRules_IsExactlyNoDifferenceInEveryPart()
    {
        var report = Run(Pump.Knowledge, Pump.Load(), MadeCases.Of(Pump.Knowledge, 20), Few);
        Assert.True(report.Scope.IsEmpty && report.IsSafe);
        Assert.Equal(Verdict.NoDifference, report.Verdict);
        Assert.All(report.Worlds, w => Assert.All(w.AtLarge.Measures, m => Assert.Equal((0, 0.0, 0.0), (m.Differ, m.Difference, m.High))));
        Assert.All(report.Worlds, w => Assert.Equal((0, 0), (w.AtLarge.LeadChanged, w.AtLarge.Commonest.Length)));
        Assert.All(report.Safety.States, s => Assert.Equal(s.OldStopped, s.NewStopped));
        Assert.StartsWith("No difference", TrialWords.Verdict(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SameTwice_IsTheSameText()
    {
        var cases = MadeCases.Of(Pump.Knowledge, 40);
        Assert.Equal(
            TrialReportJson.Write(Run(Pump.Knowledge, PumpEdits.WithStrainer, cases, Few)),
            TrialReportJson.Write(Run(Pump.Knowledge, PumpEdits.WithStrainer, cases.Reverse(), Few)));
    }

    /// <summary>A cause that the old rules do not know: its riders are mended under the new rules and handed over under the old ones.</summary>
    [Fact]
    public void Of_NewCauseThatIsThere_IsToldBetter()
    {
        var report = Run(Pump.Knowledge, PumpEdits.WithStrainer, [], Few);
        Assert.Equal("strainer-blocked", Assert.Single(report.Scope.Faults));
        Assert.Equal("clean-strainer", Assert.Single(report.Scope.Repairs));
        var world = report.Worlds[0];
        Assert.Equal((TrialWorld.NewRight, Verdict.Better), (world.World, world.Verdict));
        var mended = Assert.Single(world.Touched.Measures, m => m.Measure == Measure.Mended);
        Assert.Equal(30, mended.Pairs);
        Assert.True(mended is { Old: < 0.5, New: > 0.8 }, mended.ToString());
        Assert.True(world.Touched.Measures.Single(m => m.Measure == Measure.Cost).Difference < -30);
        Assert.Equal(30, world.AtLarge.Riders);
        var handed = world.Touched.Measures.Single(m => m.Measure == Measure.HandedOver);
        Assert.True(handed is { Old: > 0.5, New: < 0.2 }, handed.ToString());
        // What was there had no name under the old rules.
        Assert.Equal("strainer-blocked", world.Touched.Commonest[0].New);
        Assert.True(world.Touched.LeadChanged > 15 && world.Touched.Commonest.Sum(s => s.Count) <= world.Touched.LeadChanged);
        // A sum of squares over all causes, and not their mean: the old rules give next to nothing to what was there, so nearly 1 is lost on that alone.
        Assert.InRange(world.Touched.Measures.Single(m => m.Measure == Measure.Brier).Old, 0.8, 2);
    }

    [Fact]
    public void Of_CauseThatIsRetiredThoughItIsThere_IsToldWorse()
    {
        var report = Run(PumpEdits.WithStrainer, Pump.Knowledge, [], Few);
        Assert.Equal((TrialWorld.OldRight, Verdict.Worse), (report.Worlds[1].World, report.Worlds[1].Verdict));
        Assert.NotEqual(Verdict.Better, report.Verdict);
    }

    [Fact]
    public void Of_RulesThatPointAtTheWrongThing_AreWorseIfTheOldOnesAreRight()
    {
        var spoilt = PumpEdits.Changed("      hose: {kinked: almost certain}", "      hose: {kinked: almost no chance}\n      tap: {shut: almost certain}");
        var report = Run(Pump.Knowledge, spoilt, MadeCases.Of(Pump.Knowledge, 400), new RidersTried(120, 1, 0));
        Assert.Equal("hose-kinked", Assert.Single(report.Scope.Faults));
        Assert.Equal((Verdict.Worse, Verdict.Worse), (report.Replay.Verdict, report.Worlds[1].Verdict));
        Assert.Equal(30, report.Worlds[1].Touched.Riders - 30);
    }

    /// <summary>A rider of one world before the coach of the other, for all causes of both: every talk comes to an end, and what only one side knows stops nobody.</summary>
    [Fact]
    public void Across_EveryCauseOfBothWorlds_ComesToAnEnd()
    {
        KnowledgeBase[] both = [Pump.Knowledge, PumpEdits.WithStrainer];
        foreach (var (truth, coached) in new[] { (both[0], both[1]), (both[1], both[0]) })
        {
            var coach = new RememberingCoach(new Coach(coached, Listener.For(coached), Options));
            foreach (var fault in truth.Model.Faults)
            {
                var ride = CoachedRide.Across(coach, truth, new RiderDraw(truth, new RidersWanted(With: fault.Id)).Draw(1, 0), new Habits(PicksComplaint: true));
                Assert.Contains(fault.Id, ride.Rider.Machine.Faults);
                Assert.True(ride.Cost > 0, $"{fault.Id}: {ride}");
            }
        }
    }

    /// <summary>A complaint that only the bike's rules know is none of those that the coach offers.</summary>
    [Fact]
    public void Across_ComplaintThatTheCoachDoesNotKnow_EndsWithAHelper()
    {
        var truth = Pump.Load(Pump.Text
            .Replace("  - id: hums\n    called: the pump hums loudly", "  - id: rattles\n    called: the pump rattles\n    in short: It rattles.\n    riders say: [it rattles like a tin]\n  - id: hums\n    called: the pump hums loudly", StringComparison.Ordinal)
            .Replace("      hums: {yes: almost certain}", "      rattles: {yes: almost certain}\n      hums: {yes: almost no chance}", StringComparison.Ordinal));
        var coach = new RememberingCoach(new Coach(Pump.Knowledge, Listener.For(Pump.Knowledge), Options));
        var riders = Enumerable.Range(0, 12).Select(i => new RiderDraw(truth, new RidersWanted("rattles", "bearing-dry")).Draw(1, i)).Where(r => r.Complaints is ["rattles"]).ToList();
        Assert.NotEmpty(riders);
        Assert.All(riders, r => Assert.Equal(Ending.HandedOver, CoachedRide.Across(coach, truth, r, new Habits(PicksComplaint: true)).Ending));
    }

    /// <summary>Remembered talks are the talks themselves.</summary>
    [Fact]
    public void Across_RememberingOrNot_IsTheSameRide()
    {
        var remembering = new RememberingCoach(Pump.Coach);
        for (var i = 0; i < 25; i++)
        {
            var rider = new RiderDraw(Pump.Knowledge, new RidersWanted()).Draw(3, i);
            var (plain, remembered) = (CoachedRide.Of(Pump.Coach, rider, new Habits()).Ride, CoachedRide.Across(remembering, Pump.Knowledge, rider, new Habits()));
            Assert.Equal((plain.Ending, plain.Lead, plain.Asked, plain.Repairs, plain.Cost, plain.RightCause), (remembered.Ending, remembered.Lead, remembered.Asked, remembered.Repairs, remembered.Cost, remembered.RightCause));
        }
    }

    /// <summary>Riders with a fault that is forced on them are of the kinds that have it: by Bayes' rule a pump with a worn wheel is the more often an old one.</summary>
    [Fact]
    public void Draw_WithAFault_KeepsTheKindsOfBikeInProportion()
    {
        var old = Enumerable.Range(0, 400).Count(i => new RiderDraw(Pump.Knowledge, new RidersWanted(With: "wheel-worn")).Draw(9, i).Facts["age"] == "old");
        // A waited-for draw of the same: riders at large of whom those with the fault are kept.
        var waited = Enumerable.Range(0, 4000).Select(i => new RiderDraw(Pump.Knowledge, new RidersWanted()).Draw(9, i)).Where(r => r.Machine.Faults.Contains("wheel-worn")).ToList();
        var share = (double)waited.Count(r => r.Facts["age"] == "old") / waited.Count;
        // Two independent shares: apart by no more than four standard errors.
        Assert.InRange(old / 400.0, share - (4 * Math.Sqrt(0.25 * ((1.0 / 400) + (1.0 / waited.Count)))), share + (4 * Math.Sqrt(0.25 * ((1.0 / 400) + (1.0 / waited.Count)))));
        Assert.True(share > 0.5, $"{share}");
    }

    [Fact]
    public void Of_Progress_GrowsToOne()
    {
        var told = new Told();
        Trial.Of(new RulesPair(Pump.Knowledge, PumpEdits.WithStrainer), MadeCases.Of(Pump.Knowledge, 10), Options, new RidersTried(8, 1, 1), told, default);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.Equal(1, told.Shares[^1]);
        Assert.True(told.Shares.Count > 10);
    }

    [Fact]
    public void Of_Cancelled_StopsSoon()
    {
        using var source = new CancellationTokenSource();
        var told = new Told { At = 0.4, Then = source.Cancel };
        Assert.ThrowsAny<OperationCanceledException>(() => Trial.Of(new RulesPair(Pump.Knowledge, PumpEdits.WithStrainer), [], Options, new RidersTried(400), told, source.Token));
        Assert.InRange(told.Shares[^1], 0.4, 0.6);
    }

    [Fact]
    public void Json_ThereAndBack_IsTheSameReport()
    {
        var report = Run(Pump.Knowledge, PumpEdits.WithStrainer, MadeCases.Of(Pump.Knowledge, 40), Few);
        var text = TrialReportJson.Write(report);
        var again = TrialReportJson.Read(text);
        Assert.Equal(text, TrialReportJson.Write(again));
        Assert.Equal((report.Verdict, report.IsSafe, report.OldVersion), (again.Verdict, again.IsSafe, again.OldVersion));
        Assert.True(report.Worlds[0].Touched.Measures.SequenceEqual(again.Worlds[0].Touched.Measures));
        Assert.InRange(text.Length, 1_000, 20_000);
        // Nothing of a case or a member is kept with it.
        Assert.DoesNotContain("made", text, StringComparison.Ordinal);
    }

    private static TrialReport Run(KnowledgeBase old, KnowledgeBase @new, IEnumerable<ShedBot.Coaching.Cases.ClosedCase> cases, RidersTried riders) =>
        Trial.Of(new RulesPair(old, @new), cases, Options, riders, null, default);

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public double At { get; init; } = 2;

        public Action? Then { get; init; }

        public void Report(double value)
        {
            Shares.Add(value);
            if (value >= At) Then?.Invoke();
        }
    }
}
