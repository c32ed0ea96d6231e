using System.Text.Json;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Simulation;
using ShedBot.Simulation.Report;

namespace ShedBot.Tests.Simulation;

public class RunTests
{
    [Fact]
    public void All_SameSeed_GivesTheSameTable() => Assert.Equal(Table(PumpRules.Plan()), Table(PumpRules.Plan()));

    [Fact]
    public void All_AnotherSeed_GivesAnotherTable() => Assert.NotEqual(Table(PumpRules.Plan(seed: 7)), Table(PumpRules.Plan(seed: 8)).Replace("seed 8", "seed 7", StringComparison.Ordinal));

    [Fact]
    public void All_CoachedAgainstRandom_CostsLess()
    {
        var summary = Summarise(PumpRules.Plan(riders: 60));
        Assert.True(summary.Coached.Cost.Value < summary.RandomOrder.Cost.Value);
        Assert.True(summary.CostToRandomOrder.High < 1);
    }

    [Fact]
    public void All_PerFault_GivesEachFaultItsShareAndARow()
    {
        var faults = PumpRules.Knowledge.Model.Faults.Length;
        var summary = Summarise(PumpRules.Plan(riders: 3 * faults) with { PerFault = true });
        Assert.Equal(faults, summary.Confusion.Length);
        Assert.All(summary.Confusion, r => Assert.Equal(3, r.Riders));
        Assert.Equal(summary.Confusion.Sum(r => r.RightCause), (int)Math.Round(summary.Coached.RightCause!.Value.Value * 3 * faults));
    }

    // A human is the right end for what no rule lists, and for nothing else on the pump.
    [Theory]
    [InlineData("something-else", 1)]
    [InlineData("wheel-worn", 0)]
    public void All_OneFault_CountsThoseBeyondTheCoach(string fault, int share)
    {
        var summary = Summarise(PumpRules.Plan(wanted: new RidersWanted(Fault: fault)));
        Assert.Equal(12 * share, summary.BeyondTheCoach);
        Assert.Equal(summary.Coached.Mended.Value + summary.Coached.StoppedRightly.Value + (share * summary.Coached.HandedOver.Value), summary.Coached.RightEnd.Value, 12);
    }

    [Fact]
    public void Json_OfARun_IsOneObjectWithFiniteNumbers()
    {
        using var json = JsonDocument.Parse(SummaryJson.Of(Summarise(PumpRules.Plan())));
        Assert.InRange(json.RootElement.GetProperty("coached").GetProperty("mended").GetProperty("value").GetDouble(), 0, 1);
        Assert.Equal(7, json.RootElement.GetProperty("plan").GetProperty("seed").GetInt32());
    }

    [Fact]
    public void Picture_OfARun_IsDrawn()
    {
        var path = Path.Combine(Path.GetTempPath(), $"calibration-{Environment.ProcessId}.png");
        try
        {
            CalibrationPicture.Save(Summarise(PumpRules.Plan(riders: 30)), path);
            // The signature of the PNG format (ISO/IEC 15948, section 5.2).
            Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], File.ReadAllBytes(path)[..8]);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Again_EveryHabit_IsOnTheCommandLine()
    {
        var plan = new RunPlan(50, 3, new Habits(0.1, 0.5, true), new RidersWanted("no-water", "tap-shut"), true);
        Assert.Equal("simulate --riders 50 --seed 3 --wrong 0.1 --unsure 0.5 --pick --complaint no-water --fault tap-shut --confusion", SimulateCommand.Again(plan));
    }

    [Theory]
    [InlineData("--riders 0")]
    [InlineData("--wrong 1.5")]
    [InlineData("--unsure -0.1")]
    [InlineData("--seed x")]
    public void Parse_OutOfRange_IsRefused(string line) => Assert.NotEmpty(SimulateCommand.Create().Parse(line).Errors);

    [Fact]
    public void Parse_NoOptions_HasUsualOnes() => Assert.Empty(SimulateCommand.Create().Parse("").Errors);

    private static string Table(RunPlan plan) => SummaryText.Of(Summarise(plan), SimulateCommand.Again(plan));

    private static Summary Summarise(RunPlan plan)
    {
        IReadOnlyList<RiderRides> rides = Run.All(PumpRules.Coach, PumpRules.Options, plan, null, CancellationToken.None);
        return Summary.Of(PumpRules.Knowledge, PumpRules.Options.HazardLimit, plan, rides);
    }
}
