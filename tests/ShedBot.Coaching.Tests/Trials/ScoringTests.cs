using MathNet.Numerics.Distributions;
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

    [Fact]
    public void Judged_ChancesThatAddUpToMoreThanOne_AreTakenAsCertain()
    {
        var judged = Judge(("tap-shut", 0.8), ("hose-kinked", 0.7), ("wheel-worn", 0.1), mended: ["tap-shut", "hose-kinked"]);
        Assert.Equal(0.01, judged.Brier, 12);
        Assert.Equal(0, judged.Log, 12);
    }

    /// <summary>Digits that come from reckoning make nobody lead: who stands first in the rules does.</summary>
    [Fact]
    public void Judged_ChancesThatAreEqual_TheFirstInTheRulesLeads()
    {
        Assert.Equal("hose-kinked", Judge(("hose-kinked", 0.3), ("tap-shut", 0.1 + 0.2), ("wheel-worn", 0), mended: []).Lead);
        var judged = Judge(("hose-kinked", 0.31), ("tap-shut", 0.3), ("wheel-worn", 0), mended: ["tap-shut"]);
        Assert.Equal(("hose-kinked", false, new Forecast(0.31, false)), (judged.Lead, judged.Right, judged.Forecast));
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
        Assert.Equal(0.18, Paired.Calibration([.. forecasts.Select(f => (f, f))]).Old, 12);
    }

    // By hand: 0.9 said each time and half of 200 came is an error of .4, 0.5 said one of 0. In a drawing with a share s that came the difference is |.5 - s| - (.9 - s): -.4 up to
    // s = .5 and 2 s - 1.4 above. So the lower end is -.4, and the upper one that of s = .5 + 2.576 sqrt(.25 / 200) = .591 (normal approximation, usual table): -.218.
    [Fact]
    public void Calibration_OneSideTooSure_HasTheIntervalWorkedOutByHand()
    {
        var compared = Paired.Calibration([.. Enumerable.Range(0, 200).Select(i => (new Forecast(0.9, i % 2 == 0), new Forecast(0.5, i % 2 == 0)))]);
        Assert.Equal((200, 200), (compared.Pairs, compared.Differ));
        Assert.Equal(0.4, compared.Old, 12);
        Assert.Equal(0, compared.New, 12);
        Assert.Equal(-0.4, compared.Low, 12);
        Assert.InRange(compared.High, -0.218 - 0.03, -0.218 + 0.03);
        Assert.Equal(Verdict.Better, compared.Verdict);
    }

    [Fact]
    public void Calibration_FewDiffer_CountsThemAndDrawsAll()
    {
        var compared = Paired.Calibration([.. Enumerable.Range(0, 50).Select(i => (new Forecast(0.5, i % 2 == 0), new Forecast(i < 3 ? 0.9 : 0.5, i % 2 == 0)))]);
        Assert.Equal((50, 3), (compared.Pairs, compared.Differ));
        Assert.NotEqual(compared.Low, compared.High);
    }

    [Fact]
    public void Calibration_SameBothTimes_IsExactlyNoDifference()
    {
        var compared = Paired.Calibration([.. Enumerable.Range(0, 30).Select(i => (new Forecast(0.3, i % 2 == 0), new Forecast(0.3, i % 2 == 0)))]);
        Assert.Equal((0, 0.0, 0.0, compared.Old), (compared.Differ, compared.Low, compared.High, compared.New));
    }

    [Fact]
    public void Nothing_Compared_IsNoughtAndNoDifference()
    {
        Compared[] none = [Paired.Calibration([]), Paired.Means(Measure.Cost, []), Paired.Shares(Measure.Mended, [])];
        Assert.All(none, c => Assert.Equal((0, 0, 0.0, 0.0, 0.0, 0.0, Verdict.NoDifference), (c.Pairs, c.Differ, c.Old, c.New, c.Low, c.High, c.Verdict)));
    }

    [Fact]
    public void Shares_OfTenRiders_AreTheSharesUnderOldAndNew()
    {
        var compared = Paired.Shares(Measure.Mended, Enumerable.Range(0, 10).Select(i => (i < 4, i is >= 1 and < 7)));
        Assert.Equal((10, 4), (compared.Pairs, compared.Differ));
        Assert.Equal(0.4, compared.Old, 12);
        Assert.Equal(0.6, compared.New, 12);
    }

    // Wilson 1927 by hand for 2 of 4: centre (.5 + 3.8415 / 8) / (1 + 3.8415 / 4) = .5, half the width 1.96 sqrt(.25 / 4 + 3.8415 / 64) / (1 + 3.8415 / 4) = .35.
    [Fact]
    public void TrialBin_OfForecasts_LowestFirstWithWilsonsInterval()
    {
        double[] said = [0.9, 0.2, 0.2, 0.9, 0.2, 0.2];
        bool[] came = [true, true, false, true, false, true];
        var bins = TrialBin.Of(said.Zip(came, (p, h) => new Forecast(p, h)));
        Assert.Equal([4, 2], bins.Select(b => b.Count));
        Assert.Equal([0.2, 0.9], bins.Select(b => Math.Round(b.Said, 12)));
        Assert.Equal([0.5, 1], bins.Select(b => b.Came));
        Assert.Equal(0.15, bins[0].Low, 3);
        Assert.Equal(0.85, bins[0].High, 3);
        Assert.Empty(TrialBin.Of([]));
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
        // One case that differs tells nothing of the spread.
        Assert.Equal(0, Tails.Each(1));
    }

    // The same from a general library of numerics: what is left over is the next term of the same series, (79 z^9 + 776 z^7 + 1482 z^5 - 1920 z^3 - 945 z) / (92160 n^4).
    [Theory]
    [InlineData(10)]
    [InlineData(30)]
    [InlineData(100)]
    public void Tails_AgainstALibrarysStudent_LeaveTheNextTermOfTheSeries(int freedom)
    {
        var z = Normal.InvCDF(0, 1, 0.995);
        var next = ((79 * Math.Pow(z, 9)) + (776 * Math.Pow(z, 7)) + (1482 * Math.Pow(z, 5)) - (1920 * Math.Pow(z, 3)) - (945 * z)) / (92160 * Math.Pow(freedom, 4));
        Assert.InRange((StudentT.InvCDF(0, 1, freedom, 0.995) - Tails.Student(freedom)) / next, 0.7, 1.3);
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
    [InlineData(8, 0.005, 0.001, 0.009, Verdict.Better)]
    [InlineData(8, 0.3, 0, 0.5, Verdict.NoDifference)]
    [InlineData(8, -0.3, -0.5, 0, Verdict.NoDifference)]
    public void Verdict_OfAShare_NeedsEnoughCasesASureIntervalAndASizeWorthHaving(int differ, double difference, double low, double high, Verdict verdict) =>
        Assert.Equal(verdict, new Compared(Measure.Mended, 100, differ, 0, difference, low, high).Verdict);

    [Fact]
    public void Precision_IsHalfTheIntervalsWidth() => Assert.Equal(0.3, new Compared(Measure.Cost, 9, 9, 1, 1, -0.2, 0.4).Precision, 12);

    // Our own choice of what a verdict is made of; common practice, no source.
    [Theory]
    [InlineData(Measure.RightLead, true, true)]
    [InlineData(Measure.Brier, true, false)]
    [InlineData(Measure.Log, false, false)]
    [InlineData(Measure.CalibrationError, false, false)]
    [InlineData(Measure.Cost, true, false)]
    [InlineData(Measure.Asked, false, false)]
    [InlineData(Measure.RightCause, true, true)]
    [InlineData(Measure.Mended, true, true)]
    [InlineData(Measure.HandedOver, false, false)]
    public void Measures_EachOne_IsReadAsWritten(Measure measure, bool counts, bool moreIsBetter) =>
        Assert.Equal((counts, moreIsBetter), (Measures.Counts(measure), Measures.MoreIsBetter(measure)));

    [Fact]
    public void Verdicts_Together_AreMixedOnlyWhereTheyPointBothWays()
    {
        Assert.Equal(Verdict.NoDifference, Verdicts.Together([]));
        Assert.Equal(Verdict.Better, Verdicts.Together([Verdict.NoDifference, Verdict.Better]));
        Assert.Equal(Verdict.Worse, Verdicts.Together([Verdict.Worse, Verdict.NoDifference]));
        Assert.Equal(Verdict.Mixed, Verdicts.Together([Verdict.Worse, Verdict.Better]));
        Assert.Equal(Verdict.Mixed, Verdicts.Together([Verdict.Mixed]));
        Assert.Equal(Verdict.Mixed, Verdicts.Together([Verdict.Mixed, Verdict.Better, Verdict.Worse]));
        Assert.Equal(Verdict.Better, Verdicts.Together([Verdict.Better, Verdict.Better]));
        Assert.Equal(Verdict.Worse, Verdicts.Together([Verdict.Worse, Verdict.Worse]));
    }

    private static Judged Judge((string Fault, double Chance) a, string[] mended) => Judge([a], mended);

    private static Judged Judge((string Fault, double Chance) a, (string Fault, double Chance) b, (string Fault, double Chance) c, string[] mended) => Judge([a, b, c], mended);

    private static Judged Judge((string Fault, double Chance)[] chances, string[] mended) => Judged.Of(
        Pump.Knowledge,
        [.. Pump.Knowledge.Model.Faults.Select(f => chances.FirstOrDefault(c => c.Fault == f.Id).Chance)],
        [.. mended]);
}
