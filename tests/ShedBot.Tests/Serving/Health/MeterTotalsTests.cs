using System.Diagnostics.Metrics;
using ShedBot.Serving.Health;

namespace ShedBot.Tests.Serving.Health;

public sealed class MeterTotalsTests
{
    [Fact]
    public void Totals_OfTheMeter_AddUpWhateverTheTags()
    {
        using var early = new Meter("bells");
        var rings = early.CreateCounter<long>("rings");
        using var totals = new MeterTotals("bells");
        using var late = new Meter("bells");
        var seconds = late.CreateHistogram<double>("seconds");
        using var other = new Meter("horns");

        rings.Add(2, new KeyValuePair<string, object?>("who", "somebody"));
        rings.Add(3);
        seconds.Record(0.25);
        seconds.Record(0.5);
        other.CreateCounter<long>("blows").Add(1);

        Assert.Equal([new("rings", 5)], totals.Totals());
        Assert.Equal([new("seconds", new Timed(2, 0.75, 0.5))], totals.Times());
    }
}
