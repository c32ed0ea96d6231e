using CsCheck;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Reasoning.Tests.Calibration;

public class ForecastBinsTests
{
    // Five said .5, of which some came: |.5 - .4| is the error in any number of bins. Parted by what came it would be .5.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Of_EqualForecasts_StayTogether(int bins)
    {
        var all = new ForecastBins([.. Enumerable.Range(0, 5).Select(i => new Forecast(.5, i < 2))]).Of(bins);
        Assert.Equal([new ForecastBin(5, .5, 2)], all);
        Assert.Equal(.1, Scores.CalibrationError(all), 1e-12);
    }

    // By hand: six forecasts, two bins, the border at 3. The four of .4 have their middle at 3, on the border: the lower bin. Gaps |.34 - .4| and |.9 - 1|.
    [Fact]
    public void Of_GroupOnTheBorder_LiesInTheLowerBin()
    {
        Forecast[] forecasts = [new(.4, true), new(.9, true), new(.4, false), new(.1, false), new(.4, true), new(.4, false)];
        var bins = new ForecastBins(forecasts).Of(2);
        Assert.Equal([(5, 2), (1, 1)], bins.Select(b => (b.Count, b.Came)));
        Assert.Equal(.34, bins[0].Said, 1e-12);
        Assert.Equal((5.0 / 6 * .06) + (1.0 / 6 * .1), Scores.CalibrationError(bins), 1e-12);
    }

    [Fact]
    public void Of_DigitsThatComeFromReckoning_CountAsEqual() =>
        Assert.Single(new ForecastBins([new(.3, true), new(.1 + .2, false)]).Of(5));

    [Fact]
    public void Of_NoForecasts_IsEmptyAndWithoutError()
    {
        Assert.Empty(new ForecastBins([]).Of(5));
        Assert.Empty(new ForecastBins([new(.5, true)]).Of([0], 5));
        Assert.Equal(0, Scores.CalibrationError([], 5));
    }

    [Fact]
    public void Of_NoBins_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => new ForecastBins([new(.5, true)]).Of(0));

    // Where all differ and the bins divide, it is plain: sorted and cut into equal lengths.
    [Fact]
    public void Of_AllDifferent_IsCutIntoEqualLengths() =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 6], Gen.Int[0, 10_000]).Sample((bins, each, seed) =>
        {
            var chance = new Random(seed);
            var forecasts = Enumerable.Range(0, bins * each).Select(i => new Forecast((i + .5) / (bins * each), chance.Next(2) == 0)).ToArray();
            var expected = forecasts.Chunk(each).Select(c => (c.Length, c.Count(f => f.Happened))).ToList();
            chance.Shuffle(forecasts);
            Assert.Equal(expected, new ForecastBins(forecasts).Of(bins).Select(b => (b.Count, b.Came)));
        });

    // Counted repeats are the same as the forecasts written out, in whatever order, and nothing is lost.
    [Fact]
    public void Of_WithCounts_IsThatOfTheForecastsWrittenOut() =>
        Gen.Select(Gen.Select(Gen.Int[0, 8], Gen.Bool, Gen.Int[0, 3]).Array[1, 40], Gen.Int[1, 7], Gen.Int[0, 10_000]).Sample((raw, bins, seed) =>
        {
            var forecasts = raw.Select(r => new Forecast(r.Item1 / 8.0, r.Item2)).ToList();
            int[] counts = [.. raw.Select(r => r.Item3)];
            var writtenOut = forecasts.Zip(counts).SelectMany(f => Enumerable.Repeat(f.First, f.Second)).ToArray();
            new Random(seed).Shuffle(writtenOut);
            var counted = new ForecastBins(forecasts).Of(counts, bins);
            var written = new ForecastBins(writtenOut).Of(bins);
            Assert.Equal(written.Select(b => (b.Count, Math.Round(b.Said, 9), b.Came)), counted.Select(b => (b.Count, Math.Round(b.Said, 9), b.Came)));
            Assert.Equal((counts.Sum(), writtenOut.Count(f => f.Happened)), (counted.Sum(b => b.Count), counted.Sum(b => b.Came)));
            Assert.InRange(counted.Count, 0, bins);
        });
}
