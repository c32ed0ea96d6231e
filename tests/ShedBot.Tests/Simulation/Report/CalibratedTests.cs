using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Reasoning.Calibration;
using ShedBot.Simulation.Report;

namespace ShedBot.Tests.Simulation.Report;

public class CalibratedTests
{
    // By hand: leading .8 and right, .8 and wrong: Brier (.04 + .64) / 2; the other cause .3 and so: .49 and .09; the log score -ln .8 and -ln .3.
    [Fact]
    public void Of_TwoRiders_IsReckonedByHand()
    {
        var scored = Calibrated.Of([Rider(true, false), Rider(false, true)], 1)!;
        Assert.Equal((0.04 + 0.64) / 2, scored.Leading.Value, 12);
        Assert.Equal((0.04 + 0.09 + 0.64 + 0.49) / 2, scored.AllCauses.Value, 12);
        Assert.Equal((-Math.Log(0.8) - Math.Log(0.3)) / 2, scored.Log, 12);
    }

    [Fact]
    public void Of_Nobody_IsNothing() => Assert.Null(Calibrated.Of([], 1));

    [Fact]
    public void BinOf_TwelveForecasts_GivesFiveBinsInOrderThatHoldAll()
    {
        var bins = Bin.Of(Enumerable.Range(0, 12).Select(i => new Forecast(i / 12.0, i > 5)), 5);
        Assert.Equal([2, 3, 2, 3, 2], bins.Select(b => b.Count));
        Assert.Equal(bins.Select(b => b.Said).Order(), bins.Select(b => b.Said));
        Assert.Equal(6, bins.Sum(b => b.Count * b.CameTrue.Value), 9);
    }

    private static Believed Rider(bool first, bool second) => new([new Forecast(0.8, first), new Forecast(0.3, second)], new Forecast(0.8, first));
}
