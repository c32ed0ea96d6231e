using CsCheck;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Reasoning.Tests.Calibration;

public class ScoresTests
{
    [Theory]
    [InlineData(.7, true, .09)] // these five stand in an encyclopedia's text on the Brier score
    [InlineData(.3, true, .49)]
    [InlineData(.5, true, .25)]
    [InlineData(.5, false, .25)]
    [InlineData(1, false, 1)]
    public void Brier_OneForecast_GivesThePrintedValue(double probability, bool happened, double expected)
    {
        Assert.Equal(expected, Scores.Brier([new(probability, happened)]), 1e-12);

        // Brier 1950's own form counts both classes, and so is twice that.
        Assert.Equal(2 * expected, Scores.BrierOverClasses([([probability, 1 - probability], happened ? 0 : 1)]), 1e-12);
    }

    [Fact]
    public void Log_SureAndWrong_IsClipped()
    {
        Assert.Equal(0, Scores.Log([1]), 1e-12);
        Assert.Equal(Math.Log(2), Scores.Log([0.5]), 1e-12);
        Assert.Equal(-Math.Log(0.001), Scores.Log([0]), 1e-12);
    }

    [Fact]
    public void CalibrationError_TwoBins_IsTheWeightedGap()
    {
        // By hand: bin one says .1 and .3 (mean .2), half happened: gap .3; bin two says .7 and .9 (mean .8), both happened: gap .2.
        Forecast[] forecasts = [new(.9, true), new(.1, false), new(.7, true), new(.3, true)];
        Assert.Equal((.5 * .3) + (.5 * .2), Scores.CalibrationError(forecasts, 2), 1e-12);
        Assert.Equal(Math.Abs(.5 - .75), Scores.CalibrationError(forecasts, 1), 1e-12);
        Assert.Equal((.1 + .7 + .3 + .1) / 4, Scores.CalibrationError(forecasts, 9), 1e-12);
    }

    [Fact]
    public void CalibrationError_CountDoesNotDivide_MiddleOneFallsIntoTheLowerBin()
    {
        Forecast[] forecasts = [new(.1, false), new(.3, true), new(.8, true)];
        Assert.Equal((2.0 / 3 * .3) + (1.0 / 3 * .2), Scores.CalibrationError(forecasts, 2), 1e-12);
    }

    [Fact]
    public void Decompose_AnyForecasts_PartsAddUpToBrier() =>
        Gen.Select(Gen.Int[0, 10], Gen.Bool).Array[1, 60].Sample(raw =>
        {
            // Murphy 1973: Brier = reliability - resolution + uncertainty, exact when each bin holds one forecast value.
            var forecasts = raw.Select(r => new Forecast(r.Item1 / 10.0, r.Item2)).ToList();
            var parts = Scores.Decompose(forecasts);
            Assert.Equal(Scores.Brier(forecasts), parts.Brier, 1e-12);
            Assert.InRange(parts.Reliability, 0, 1);
            Assert.InRange(parts.Resolution, 0, parts.Uncertainty + 1e-12);
        });

    [Fact]
    public void Decompose_PerfectlyCalibrated_HasNoReliabilityLoss()
    {
        Forecast[] forecasts = [new(.5, true), new(.5, false), new(1, true), new(0, false)];
        Assert.Equal(0, Scores.Decompose(forecasts).Reliability, 1e-12);
        Assert.Equal(.25, Scores.Decompose(forecasts).Uncertainty, 1e-12);
        Assert.Equal(.125, Scores.Decompose(forecasts).Resolution, 1e-12);
    }
}
