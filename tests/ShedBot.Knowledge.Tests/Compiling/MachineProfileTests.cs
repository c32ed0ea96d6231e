using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Tests.Samples;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Tests.Compiling;

public class MachineProfileTests
{
    private static readonly KnowledgeBase Lamp = LampRules.Knowledge();

    [Fact]
    public void Of_ValueThatMovesAFault_MultipliesItsOdds()
    {
        var profile = MachineProfile.Of(Lamp, Known("years-ago"));

        Assert.Equal([new ContextShift("bulb-burnt", Math.Log(6))], profile.Shifts.AsEnumerable());
        Assert.Empty(profile.Removed);
    }

    [Fact]
    public void Of_ValueWithTimesZero_TakesTheFaultOut()
    {
        Assert.Equal("bulb-burnt", Assert.Single(MachineProfile.Of(Lamp, Known("no-bulb")).Removed));
        Assert.DoesNotContain(MachineProfile.ModelFor(Lamp, Known("no-bulb")).Faults, f => f.Id == "bulb-burnt");
    }

    [Theory]
    [InlineData("this-year")]
    [InlineData("a-value-of-older-rules")]
    public void ModelFor_ValueThatMovesNothing_IsTheModelOfAll(string value) =>
        Assert.Same(Lamp.Model, MachineProfile.ModelFor(Lamp, Known(value)));

    private static Dictionary<string, string> Known(string value) => new() { ["bulb-age"] = value };
}
