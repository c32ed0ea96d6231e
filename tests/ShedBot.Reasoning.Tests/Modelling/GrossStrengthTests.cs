using CsCheck;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Modelling;

public class GrossStrengthTests
{
    [Fact]
    public void ToNet_TwoStates_IsHenrionsFormula() =>
        Gen.Select(Gen.Double[0, 0.9], Gen.Double[0, 1]).Sample((leak, above) =>
        {
            // Henrion 1989 against Diez 1993: s = (p - leak) / (1 - leak).
            var gross = leak + (above * (0.999 - leak));
            Assert.Equal((gross - leak) / (1 - leak), GrossStrength.ToNet([0, gross], [0, leak])[1], 1e-13);
        });

    [Fact]
    public void ToNet_SeveralStates_ThisFaultAloneShowsTheGrossStrengthsExactly() =>
        Gen.Select(Gen.Double[0.01, 0.2], Gen.Double[0.01, 0.2], Gen.Double[0, 0.5], Gen.Double[0, 0.5]).Sample((a, b, more, less) =>
        {
            double[] gross = [0, a + (more * (0.98 - a - b)), b + (less * (0.98 - a - b))];
            var alone = Alone([0, a, b], gross);
            Assert.Equal(gross[1], alone[1], 1e-12);
            Assert.Equal(gross[2], alone[2], 1e-12);
        });

    [Fact]
    public void ToNet_NothingSaidOfAState_AddsNothingToIt()
    {
        var net = GrossStrength.ToNet([0, 0.8, 0], [0, 0.05, 0.1]);
        Assert.Equal(0, net[2]);
        Assert.Equal(0.8, Alone([0, 0.05, 0.1], [0, 0.8, 0])[1], 1e-12);
        Assert.Equal([1, 0, 0], GrossStrength.ToNet([0, 0, 0], [0, 0.05, 0.1]).ToArray());
    }

    [Fact]
    public void ToNet_Sure_StaysSure() => Assert.Equal([0, 0.25, 0.75], GrossStrength.ToNet([0, 0.25, 0.75], [0, 0.1, 0.1]).ToArray());

    [Fact]
    public void ToNet_BelowTheLeak_SaysSo()
    {
        var refusal = Assert.Throws<ArgumentException>(() => GrossStrength.ToNet([0, 0.1], [0, 0.2]));
        Assert.Contains("less than the leak of 0.2", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(0, GrossStrength.ToNet([0, 0.2], [0, 0.2])[1], 1e-13);
    }

    [Theory]
    [InlineData(1.2, 0.1)]
    [InlineData(-0.1, 0.1)]
    [InlineData(double.NaN, 0.1)]
    [InlineData(0.5, 1)]
    [InlineData(0.5, -0.1)]
    public void ToNet_OutOfRange_Refuses(double gross, double leak) =>
        Assert.Throws<ArgumentException>(() => GrossStrength.ToNet([0, gross], [0, leak]));

    [Fact]
    public void ToNet_LengthsDiffer_Refuses() => Assert.Throws<ArgumentException>(() => GrossStrength.ToNet([0, 0.5, 0.1], [0, 0.1]));

    private static double[] Alone(double[] leak, double[] gross)
    {
        var finding = new Finding("g", [.. leak.Select((_, i) => $"s{i}")], [.. leak], [new("f", GrossStrength.ToNet(gross, leak))]);
        return new StateChances(DiagnosticModel.Create([new("f", 0.1)], [finding], [], [], [], 50), 0).Given([0]);
    }
}
