using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>Scores against figures worked out by hand from the published formulas.</summary>
public class ScoringTests
{
    // Brier 1950, formula (2) for one occasion: the sum over classes of (f - E)^2. 0.2^2 + 0.3^2 + 0.4^2 and the rest 0, worked out by hand.
    [Fact]
    public void Judged_OneConfirmedCause_HasTheBrierScoreOfSeveralClasses()
    {
        var judged = Judge(("tap-shut", 0.8), ("hose-kinked", 0.3), ("wheel-worn", 0.4), mended: ["tap-shut"]);
        Assert.Equal(0.04 + 0.09 + 0.16, judged.Brier, 12);
        Assert.Equal(("tap-shut", true), (judged.Lead, judged.Right));
        // Good 1952: the log score, -ln 0.8.
        Assert.Equal(0.22314355, judged.Log, 8);
    }

    [Fact]
    public void Judged_RepairForTwoCauses_TakesThemAsOne()
    {
        var judged = Judge(("tap-shut", 0.5), ("hose-kinked", 0.3), ("wheel-worn", 0.1), mended: ["tap-shut", "hose-kinked"]);
        Assert.Equal(0.04 + 0.01, judged.Brier, 12);
        Assert.Equal(-Math.Log(0.8), judged.Log, 12);
    }

    // The floor of 0.001 keeps one sure mistake finite: -ln 0.001 = 6.9078 (table of logarithms).
    [Fact]
    public void Judged_CauseThatWasGivenNoChance_CostsTheFloor() =>
        Assert.Equal(6.9078, Judge(("tap-shut", 0.9), mended: ["bearing-dry"]).Log, 4);

    // Worked out by hand: ten forecasts, five bins of two. Bins: |.10-.5| |.3-.5| |.5-.5| |.7-.5| |.9-1| = .4 .2 0 .2 .1, mean .18.
    [Fact]
    public void CalibrationError_TenForecasts_IsTheMeanGapOfFiveBins()
    {
        double[] said = [0.1, 0.1, 0.3, 0.3, 0.5, 0.5, 0.7, 0.7, 0.9, 0.9];
        bool[] came = [false, true, false, true, false, true, false, true, true, true];
        var forecasts = said.Zip(came, (p, h) => new Forecast(p, h)).ToList();
        Assert.Equal(0.18, new SortedForecasts(forecasts).Error([.. Enumerable.Repeat(1, 10)], 5), 12);
        Assert.Equal(0.18, Paired.Calibration([.. forecasts.Select(f => (f, f))]).Old, 12);
    }

    // Counted repeats are the same as the forecasts written out: held against the reasoning's own score, which knows no counts.
    [Fact]
    public void CalibrationError_WithCounts_IsThatOfTheForecastsWrittenOut()
    {
        var chance = new Random(5);
        for (var round = 0; round < 200; round++)
        {
            var forecasts = Enumerable.Range(0, 1 + chance.Next(40)).Select(_ => new Forecast(chance.Next(8) / 8.0, chance.Next(2) == 0)).ToList();
            int[] counts = [.. forecasts.Select(_ => chance.Next(4))];
            counts[0]++;
            var writtenOut = forecasts.Zip(counts).SelectMany(f => Enumerable.Repeat(f.First, f.Second)).ToList();
            Assert.Equal(Scores.CalibrationError(writtenOut), new SortedForecasts(forecasts).Error(counts, 5), 12);
        }
    }

    [Fact]
    public void Means_SameBothTimes_AreExactlyNoDifference()
    {
        var compared = Paired.Means(Measure.Cost, [(3.1, 3.1), (0.2, 0.2), (7, 7)]);
        Assert.Equal((0, 0.0, 0.0, Verdict.NoDifference), (compared.Differ, compared.Low, compared.High, compared.Verdict));
        Assert.Equal(compared.Old, compared.New);
    }

    // Student 1908, the hours of sleep gained by ten patients under two drugs; the paired difference is 1.58, its 99 % t-interval 0.3155 to 2.8445
    // (textbook values, from memory). The interval of ten pairs agrees with it within the spread of such small samples.
    [Fact]
    public void Means_HoursOfSleep_AgreesWithThePairedInterval()
    {
        double[] one = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0], two = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
        var compared = Paired.Means(Measure.RightLead, [.. one.Zip(two)]);
        Assert.Equal(1.58, compared.Difference, 12);
        Assert.InRange(compared.Low, 0.3155, 0.9);
        Assert.InRange(compared.High, 2.3, 3.2);
        Assert.Equal(Verdict.Better, compared.Verdict);
        Assert.Equal(Verdict.Worse, (compared with { Measure = Measure.Cost }).Verdict);
    }

    // Quantiles 99.5 % of Student's t from the usual table: 3.499 (7), 3.250 (9), 2.861 (19), 2.660 (60).
    [Fact]
    public void Tails_AgainstTheTables_Agree()
    {
        foreach (var (freedom, quantile) in new[] { (7, 3.499), (9, 3.250), (19, 2.861), (60, 2.660) }) Assert.InRange(Tails.Student(freedom), quantile * 0.995, quantile * 1.005);
        Assert.Equal(0.005, Tails.Each(1_000_000), 5);
        Assert.InRange(Tails.Each(20), 0.0015, 0.0018);
    }

    // Half of all differences turned round by chance: nothing is better or worse then, and a verdict would be noise. At 99 % one in a hundred may slip
    // through; of 400 trials 4 are expected, and 11 or more come once in some 300 such runs (binomial). The seed is fixed.
    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(240)]
    public void Means_OnlyNoise_SeldomMakesAVerdict(int pairs)
    {
        var (chance, verdicts) = (new Random(pairs), 0);
        for (var trial = 0; trial < 400; trial++)
        {
            var drawn = Enumerable.Range(0, pairs)
                .Select(_ => chance.Next(3) == 0 ? -Math.Log(1 - chance.NextDouble()) * 40 * (chance.Next(2) == 0 ? 1 : -1) : 0)
                .Select(d => (100.0, 100 + d)).ToList();
            if (Paired.Means(Measure.Cost, drawn).Verdict != Verdict.NoDifference) verdicts++;
        }

        Assert.InRange(verdicts, 0, 10);
    }

    [Theory]
    [InlineData(7, 0.3, 0.1, 0.5, Verdict.NoDifference)]
    [InlineData(8, 0.3, 0.1, 0.5, Verdict.Better)]
    [InlineData(8, 0.3, -0.01, 0.5, Verdict.NoDifference)]
    [InlineData(8, -0.3, -0.5, -0.1, Verdict.Worse)]
    [InlineData(8, 0.004, 0.001, 0.007, Verdict.NoDifference)]
    public void Verdict_OfAShare_NeedsEnoughCasesASureIntervalAndASizeWorthHaving(int differ, double difference, double low, double high, Verdict verdict) =>
        Assert.Equal(verdict, new Compared(Measure.Mended, 100, differ, 0.5, 0.5 + difference, low, high).Verdict);

    [Fact]
    public void Verdicts_Together_AreMixedOnlyWhereTheyPointBothWays()
    {
        Assert.Equal(Verdict.NoDifference, Verdicts.Together([]));
        Assert.Equal(Verdict.Better, Verdicts.Together([Verdict.NoDifference, Verdict.Better]));
        Assert.Equal(Verdict.Worse, Verdicts.Together([Verdict.Worse, Verdict.NoDifference]));
        Assert.Equal(Verdict.Mixed, Verdicts.Together([Verdict.Worse, Verdict.Better]));
        Assert.Equal(Verdict.Mixed, Verdicts.Together([Verdict.Mixed]));
    }

    private static Judged Judge((string Fault, double Chance) a, string[] mended) => Judge([a], mended);

    private static Judged Judge((string Fault, double Chance) a, (string Fault, double Chance) b, (string Fault, double Chance) c, string[] mended) => Judge([a, b, c], mended);

    private static Judged Judge((string Fault, double Chance)[] chances, string[] mended) => Judged.Of(
        Pump.Knowledge,
        [.. Pump.Knowledge.Model.Faults.Select(f => chances.FirstOrDefault(c => c.Fault == f.Id).Chance)],
        [.. mended]);
}
