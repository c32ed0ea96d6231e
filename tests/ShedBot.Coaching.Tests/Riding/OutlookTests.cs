using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

public sealed class OutlookTests
{
    private static readonly LocalDate May3 = new(2026, 5, 3);

    /// <summary>
    /// With one chance for every day and no doubt, the day of the N-th ride has a negative binomial distribution: P(T ≤ t) = P(Binomial(t, p) ≥ N) (any
    /// textbook of probability). The sums are made here, term by term.
    /// </summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.57)]
    [InlineData(0.9)]
    public void When_OneChanceForEveryDay_IsNearTheNegativeBinomial(double chance)
    {
        var outlook = new Outlook(RidingLog.None, Steady(chance), May3);
        foreach (var need in new[] { 1, 2, 3, 5, 8, 14, 30 })
        {
            var found = outlook.When(need, new Amount(1, 0));
            AssertNear(Exact(need, chance, 0.1), found.Earliest, need, chance);
            AssertNear(Exact(need, chance, 0.5), found.Expected, need, chance);
            AssertNear(Exact(need, chance, 0.9), found.Latest, need, chance);
        }
    }

    [Fact]
    public void When_OnABreak_IsSoMuchLater()
    {
        var log = RidingLog.None with { Breaks = [new RidingBreak(May3.PlusDays(2), May3.PlusDays(52))] };

        Assert.Equal(
            new Outlook(RidingLog.None, Steady(0.5), May3).When(10, new Amount(1, 0)).Expected!.Value.PlusDays(50),
            new Outlook(log, Steady(0.5), May3).When(10, new Amount(1, 0)).Expected);
    }

    [Fact]
    public void When_OnABreakWithoutEnd_HasNoDay()
    {
        var log = RidingLog.None with { Breaks = [new RidingBreak(May3, null)] };

        Assert.Equal(default, new Outlook(log, Steady(0.5), May3).When(1, new Amount(1, 0)));
    }

    [Fact]
    public void When_MoreDoubtOrMoreClumping_HasAWiderBandRoundTheSameDay()
    {
        var (sure, doubtful, clumped) = (Band(Steady(0.5)), Band(Steady(0.5) with { Doubt = 0.2 }), Band(Steady(0.5) with { Clumping = 3 }));

        Assert.Equal(sure.Expected, doubtful.Expected);
        Assert.True(doubtful.Earliest < sure.Earliest && doubtful.Latest > sure.Latest);
        Assert.True(clumped.Earliest < sure.Earliest && clumped.Latest > sure.Latest);

        static Expectation Band(Pace pace) => new Outlook(RidingLog.None, pace, May3).When(14, new Amount(1, 0));
    }

    [Fact]
    public void When_Kilometres_IsTheDistanceOverTheDailyMean() =>
        Assert.Equal(May3.PlusDays(19), new Outlook(RidingLog.None, Steady(0.5), May3).When(100, new Amount(10, 25)).Expected);

    private static Pace Steady(double chance) =>
        new([.. Enumerable.Repeat(chance, 7)], 7 * chance, 0, 1, new Amount(10, 25), new Amount(0.5, 0.06), [1, 0, 0], PaceBasis.Logged, 50, null);

    private static void AssertNear(int exact, LocalDate? found, int need, double chance)
    {
        // A day, or a tenth of the wait: the approximation is at its worst for one ride of somebody who seldom rides.
        var off = Period.DaysBetween(May3.PlusDays(exact - 1), found!.Value);
        Assert.True(Math.Abs(off) <= Math.Max(1, exact / 10.0), $"{need} rides at {chance}: {off} days off {exact}");
    }

    /// <summary>The first number of days in which so many rides have at least this probability.</summary>
    private static int Exact(int need, double chance, double probability)
    {
        for (var days = need; ; days++)
        {
            var (term, below) = (Math.Pow(1 - chance, days), 0.0);
            for (var rides = 0; rides < need; rides++)
            {
                below += term;
                term *= (days - rides) / (rides + 1.0) * chance / (1 - chance);
            }

            if (1 - below >= probability) return days;
        }
    }
}
