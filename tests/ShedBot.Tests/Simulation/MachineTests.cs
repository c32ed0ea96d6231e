using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Tests.Simulation;

public class MachineTests
{
    private const int Many = 20_000;

    private static DiagnosticModel Model => PumpRules.Knowledge.Model;

    // Held against the state chances of the reasoning, which come from the closed form of the competing hazards rather than from strikes.
    [Theory]
    [InlineData("no-water", "hose-kinked")]
    [InlineData("no-water", "hose-kinked", "wheel-worn")]
    [InlineData("wheel", "wheel-worn", "something-else")]
    [InlineData("bearing", "tap-shut")]
    public void StateOf_ManyMachines_FollowsTheChancesOfTheModel(string finding, params string[] faults)
    {
        var at = Model.FindingAt(finding);
        var expected = new StateChances(Model, at).Given([.. faults.Select(Model.FaultAt)]);
        var counts = new int[expected.Length];
        for (var i = 0; i < Many; i++) counts[Machine(i, faults).StateOf(finding)]++;
        for (var state = 0; state < expected.Length; state++)
        {
            var slack = 0.001 + (4 * Math.Sqrt(expected[state] * (1 - expected[state]) / Many));
            Assert.InRange(counts[state] / (double)Many, expected[state] - slack, expected[state] + slack);
        }
    }

    [Fact]
    public void After_RepairOfOneOfTwo_LeavesTheOtherAndWhatItShows()
    {
        var (mended, bearing) = (0, Model.Repairs[Model.RepairAt("straighten-hose")]);
        for (var i = 0; i < 200; i++)
        {
            var before = Machine(i, "hose-kinked", "bearing-dry");
            var after = before.After(bearing, 0);
            Assert.Contains("bearing-dry", after.Faults);
            Assert.Equal(before.StateOf("bearing"), after.StateOf("bearing"));
            if (after.Faults.Count == 1) mended++;
        }

        // 'Very likely' is 0.875 (the middle of the band of ICD 203, 80 to 95 %).
        Assert.InRange(mended / 200.0, 0.77, 0.97);
    }

    [Fact]
    public void After_SecondTry_IsRolledAnew()
    {
        var repair = Model.Repairs[Model.RepairAt("straighten-hose")];
        Assert.Contains(Enumerable.Range(0, 200), i =>
            Machine(i, "hose-kinked").After(repair, 0).Faults.Count != Machine(i, "hose-kinked").After(repair, 1).Faults.Count);
    }

    private static Machine Machine(int number, params string[] faults) => new(Model, [.. faults], new Luck(3, number));
}
