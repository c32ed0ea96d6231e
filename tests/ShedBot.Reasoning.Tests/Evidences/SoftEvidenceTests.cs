using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Evidences;

public class SoftEvidenceTests
{
    [Theory]
    [InlineData(0.6, 0.2, 6)] // odds 1.5 over odds .25
    [InlineData(0.2, 0.2, 1)] // a score at the base rate says nothing
    [InlineData(0.1, 0.25, 1.0 / 3)]
    [InlineData(0.99, 0.1, 10)] // 891 : 1, capped
    [InlineData(1, 0.1, 10)]
    [InlineData(0, 0.1, 0.1)]
    public void Ratio_ScoreAndBaseRate_DividesTheOdds(double score, double baseRate, double expected) =>
        Assert.Equal(expected, SoftEvidence.Ratio(score, baseRate), 1e-12);

    [Theory]
    [InlineData(1.1, 0.5)]
    [InlineData(double.NaN, 0.5)]
    [InlineData(0.5, 0)]
    [InlineData(0.5, 1)]
    public void Ratio_OutOfRange_Refuses(double score, double baseRate) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SoftEvidence.Ratio(score, baseRate));

    [Fact]
    public void Hint_YesNoFinding_WeighsYesByTheRatio()
    {
        var hint = SoftEvidence.Hint(Finding.YesNo("g", 0.1), 0.6, 0.2);
        Assert.Equal("g", hint.Finding);
        Assert.Equal(6, hint.Weights[1] / hint.Weights[0], 1e-12);
        Assert.Throws<ArgumentException>(() => SoftEvidence.Hint(new Finding("g", ["a", "b", "c"], [0, 0, 0], []), 0.6, 0.2));
    }
}
