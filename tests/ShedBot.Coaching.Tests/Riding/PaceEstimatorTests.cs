using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

public sealed class PaceEstimatorTests
{
    private static readonly LocalDate May3 = new(2026, 5, 3);
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_NothingKnown_IsTheUsualPace()
    {
        var pace = PaceEstimator.Of(RidingLog.None, May3);

        // Three days a week, 10 km and half an hour: common practice, no source.
        Assert.Equal((3, 10, 0.5, PaceBasis.Usual), (Math.Round(pace.DaysPerWeek, 9), pace.Kilometres.Mean, pace.Hours.Mean, pace.Basis));
    }

    [Fact]
    public void Of_PaceStated_IsThat()
    {
        var pace = PaceEstimator.Of(RidingLog.None.StatePace(new StatedPace(5, 30, null, May3), Noon).Must, May3);

        Assert.Equal((5, 30, 1.5, PaceBasis.Stated), (Math.Round(pace.DaysPerWeek, 9), pace.Kilometres.Mean, pace.Hours.Mean, pace.Basis));
    }

    /// <summary>The conjugate rule by hand: after the first day, two ridden days of three, all of one weight but for six weeks of forgetting.</summary>
    [Fact]
    public void Of_FewDays_IsPriorAndEvidenceTogether()
    {
        var log = Ridden(0, 1, 3);
        double Weight(int age) => Math.Pow(0.5, age / 42.0);
        var chance = ((7 * 3 / 7.0) + Weight(0) + Weight(2)) / (7 + Weight(0) + Weight(1) + Weight(2));

        var pace = PaceEstimator.Of(log, May3.PlusDays(4));

        // Weekdays that were never looked at have the common chance.
        Assert.Equal(chance, pace.ChanceOn(May3.PlusDays(6)), 12);
        Assert.Equal(((3 * chance) + Weight(0)) / (3 + Weight(0)), pace.ChanceOn(May3.PlusDays(3)), 12);
        Assert.Equal(PaceBasis.Usual, pace.Basis);
    }

    [Fact]
    public void Of_TodayNotRiddenYet_SaysNothing() =>
        Assert.Equal(PaceEstimator.Of(Ridden(0, 1, 3), May3.PlusDays(4)).Chances.AsEnumerable(), PaceEstimator.Of(Ridden(0, 1, 3), May3.PlusDays(3)).Chances);

    [Fact]
    public void Of_ALongBreak_LeavesThePaceAsItWas()
    {
        int[] days = [.. Enumerable.Range(0, 60).Where(d => d % 2 == 0)];
        var before = Ridden(days);
        var rest = before.Break(May3.PlusDays(59), May3.PlusDays(200), May3.PlusDays(59), Noon).Must;

        Assert.Equal(PaceEstimator.Of(before, May3.PlusDays(59)).Chances.AsEnumerable(), PaceEstimator.Of(rest, May3.PlusDays(200)).Chances);
    }

    [Fact]
    public void Of_LongSilence_IsNotTakenForASlowPace()
    {
        var log = Ridden([.. Enumerable.Range(0, 60)]);
        var pace = PaceEstimator.Of(log, May3.PlusDays(160));

        Assert.Equal(May3.PlusDays(59), pace.QuietSince);
        Assert.Equal(PaceEstimator.Of(log, May3.PlusDays(60)).DaysPerWeek, pace.DaysPerWeek);
        Assert.Null(PaceEstimator.Of(log, May3.PlusDays(66)).QuietSince);
    }

    [Fact]
    public void Of_HabitsChanged_FollowsTheNewOnes()
    {
        var log = Ridden([.. Enumerable.Range(0, 100), .. Enumerable.Range(0, 30).Select(i => 100 + (7 * i))]);

        Assert.InRange(PaceEstimator.Of(log, May3.PlusDays(304)).DaysPerWeek, 0.9, 1.6);
    }

    [Fact]
    public void Of_SaturdaysOnly_ExpectsSaturdays()
    {
        // 2 May 2026 is a Saturday.
        var log = Ridden([.. Enumerable.Range(0, 30).Select(i => (7 * i) - 1)]);
        var pace = PaceEstimator.Of(log, May3.PlusDays(205));

        Assert.True(pace.ChanceOn(May3.PlusDays(-1)) > 0.7);
        Assert.True(pace.ChanceOn(May3) < 0.1);
    }

    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(1.0, 0.841344746)]
    [InlineData(1.959963985, 0.975)]
    [InlineData(-1.644853627, 0.05)]
    [InlineData(-3.0, 0.001349898)]
    public void Below_KnownPoints_IsTheTablesValue(double z, double share) =>
        // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1; from memory.
        Assert.Equal(share, NormalCurve.Below(z), 7.5e-8);

    private static RidingLog Ridden(params int[] days) => days.Aggregate(
        RidingLog.None, (log, d) => log.Log(new RiddenDay(May3.PlusDays(d), null, null, Weather.Dry), May3.PlusDays(Math.Max(d, 0)), null, Noon).Must);
}
