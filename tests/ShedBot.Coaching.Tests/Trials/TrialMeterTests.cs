using ShedBot.Coaching.Trials;

namespace ShedBot.Coaching.Tests.Trials;

public class TrialMeterTests
{
    private readonly Told told = new();

    [Fact]
    public void Tell_SameHundredthOrLess_IsNotToldAgain()
    {
        var meter = new TrialMeter(told);
        foreach (var share in new[] { 0, 0.101, 0.109, 0.05, 0.11, 1 }) meter.Tell(share);
        Assert.Equal([0, 0.1, 0.11, 1], told.Shares);
    }

    [Fact]
    public void Tell_OutOfRange_IsHeldInIt()
    {
        var meter = new TrialMeter(told);
        foreach (var share in new[] { -3, 1.5, 2 }) meter.Tell(share);
        Assert.Equal([0, 1], told.Shares);
    }

    [Fact]
    public void Between_APart_IsThatShareOfTheWhole()
    {
        var part = new TrialMeter(told).Between(0.2, 0.6);
        foreach (var share in new[] { 0, 0.5, 1 }) part(share);
        Assert.Equal([0.2, 0.4, 0.6], told.Shares);
    }

    [Fact]
    public void Steps_OfAPart_CountUpToItsEnd()
    {
        var step = new TrialMeter(told).Steps(0.5, 1, 4);
        for (var i = 0; i < 4; i++) step();
        Assert.Equal([0.62, 0.75, 0.87, 1], told.Shares);
    }

    [Fact]
    public void Steps_OfNone_AreAtTheEndAtOnce()
    {
        new TrialMeter(told).Steps(0.5, 1, 0)();
        Assert.Equal([1], told.Shares);
    }

    [Fact]
    public void Tell_Nobody_IsNothing() => new TrialMeter(null).Tell(0.5);

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
