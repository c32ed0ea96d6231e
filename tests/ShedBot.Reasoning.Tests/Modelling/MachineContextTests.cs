using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Tests.Inference;

namespace ShedBot.Reasoning.Tests.Modelling;

public class MachineContextTests
{
    [Fact]
    public void Apply_Shift_MultipliesTheOdds()
    {
        // By hand: prior .2 has odds 1/4; three times that is 3/4, a probability of 3/7. Two shifts add up: odds 9/4, 9/13.
        var once = MachineContext.Apply(Examples.Three(), [new("X", Math.Log(3))], []);
        Assert.Equal(3.0 / 7, once.Faults[once.FaultAt("X")].Prior, 1e-12);
        Assert.Equal(0.5, once.Faults[once.FaultAt("F")].Prior, 1e-12);
        var twice = MachineContext.Apply(Examples.Three(), [new("X", Math.Log(3)), new("X", Math.Log(3))], []);
        Assert.Equal(9.0 / 13, twice.Faults[twice.FaultAt("X")].Prior, 1e-12);
    }

    [Fact]
    public void Apply_PartNotFitted_FaultGoesWithItsLinksAndFixes()
    {
        var model = MachineContext.Apply(Examples.Three(), [], ["S"]);
        Assert.Equal(["F", "X"], model.Faults.Select(f => f.Id));
        Assert.Empty(model.Findings[0].Links);
        Assert.Empty(model.Repairs[model.RepairAt("S")].Fixes);
        Assert.Equal(0.5 / 0.7, Inferrer.InferSingle(model, []).Marginal("F"), 1e-12);
    }

    [Fact]
    public void Apply_HugeShift_NeverMakesAFaultCertain() =>
        Assert.InRange(MachineContext.Apply(Examples.Three(), [new("X", 1e6)], []).Faults[2].Prior, 0.999, 1 - 1e-10);

    [Fact]
    public void Apply_WrongNamesOrNumbers_Throws()
    {
        Assert.Throws<KeyNotFoundException>(() => MachineContext.Apply(Examples.Three(), [new("nosuch", 1)], []));
        Assert.Throws<KeyNotFoundException>(() => MachineContext.Apply(Examples.Three(), [], ["nosuch"]));
        Assert.Throws<ArgumentException>(() => MachineContext.Apply(Examples.Three(), [new("X", double.NaN)], []));
        Assert.Throws<ArgumentException>(() => MachineContext.Apply(Examples.Three(), [], ["F", "S", "X"]));
    }
}
