using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

public sealed class RideLoggingTests
{
    private static readonly LocalDate May3 = new(2026, 5, 3);
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Log_TwoRidesOfADay_AddUpWithTheWorstWeather()
    {
        var log = Log(Log(Log(RidingLog.None, May3, 4.1), May3, 4.2, 0.5, Weather.Wet), May3, null, 0.25, Weather.Dusty);

        Assert.Equal(new RiddenDay(May3, 8.3, 0.75, Weather.Wet), Assert.Single(log.Days));
    }

    [Theory]
    [InlineData(1, "future")]
    [InlineData(-5, "before-fitted")]
    public void Log_DayThatCannotBe_IsRefused(int days, string code)
    {
        var refused = RidingLog.None.Log(new RiddenDay(May3.PlusDays(days), null, null, Weather.Dry), May3, May3.PlusDays(-4), Noon).Refused!;

        Assert.Equal(code, refused.Code);
        Assert.Contains(Dates.Say(May3.PlusDays(days)), refused.Say, StringComparison.Ordinal);
    }

    [Fact]
    public void Log_DayOfTheFitting_IsTaken() =>
        Assert.Single(RidingLog.None.Log(new RiddenDay(May3, null, null, Weather.Dry), May3, May3, Noon).Must.Days);

    [Theory]
    [InlineData(0.0, null, "distance")]
    [InlineData(-1.0, null, "distance")]
    [InlineData(0.0004, null, "distance")]
    [InlineData(double.NaN, null, "distance")]
    [InlineData(double.PositiveInfinity, null, "distance")]
    [InlineData(300.0, null, "distance")]
    [InlineData(null, 0.0, "time")]
    [InlineData(null, 15.0, "time")]
    public void Log_AmountThatCannotBe_IsRefused(double? km, double? hours, string code)
    {
        var before = Log(RidingLog.None, May3, 250, 10);

        Assert.Equal(code, before.Log(new RiddenDay(May3, km, hours, Weather.Dry), May3, null, Noon).Refused!.Code);
    }

    [Fact]
    public void Log_LongerAgoThanDaysAreKept_IsRefused()
    {
        var oldest = May3.PlusDays(-RidingLog.KeepsDays);

        Assert.Single(RidingLog.None.Log(new RiddenDay(oldest, null, null, Weather.Dry), May3, null, Noon).Must.Days);
        Assert.Equal("too-old", RidingLog.None.Log(new RiddenDay(oldest.PlusDays(-1), null, null, Weather.Dry), May3, null, Noon).Refused!.Code);
    }

    [Fact]
    public void Log_OlderDays_AreFoldedIntoTotals()
    {
        var log = RidingLog.None;
        for (var i = 0; i < 500; i++) log = Log(log, May3.PlusDays(i), i % 2 == 0 ? 10 : null, null, i % 5 == 0 ? Weather.Wet : Weather.Dry);

        Assert.Equal(401, log.Days.Length);
        Assert.Equal((May3, May3.PlusDays(98)), (log.Folded!.First, log.Folded.Last));
        Assert.Equal([new WeatherTotal(Weather.Dry, 79, 40, 400, 0, 0), new WeatherTotal(Weather.Wet, 20, 10, 100, 0, 0)], log.Folded.Totals.AsEnumerable());
        Assert.Equal("too-old", log.Log(new RiddenDay(May3.PlusDays(98), null, null, Weather.Dry), May3.PlusDays(499), null, Noon).Refused!.Code);
    }

    [Fact]
    public void Log_ClockAheadForAWhile_FoldsNothingByItself()
    {
        var log = Log(RidingLog.None, May3, 10);

        Assert.Equal(log.Days, log.Break(May3.PlusDays(9000), null, May3.PlusDays(9000), Noon).Must.Days);
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(null, false)]
    [InlineData(5, true)]
    public void Log_RideInABreak_EndsIt(int? until, bool logsFirst)
    {
        Func<RidingLog, RidingLog> rest = l => l.Break(May3, until is { } u ? May3.PlusDays(u) : null, May3, Noon).Must;
        var log = logsFirst ? rest(Log(RidingLog.None, May3.PlusDays(3))) : Log(rest(RidingLog.None), May3.PlusDays(3));

        Assert.Equal([new RidingBreak(May3, May3.PlusDays(3))], log.Breaks.AsEnumerable());
    }

    [Fact]
    public void Log_RideOnTheFirstDayOfABreak_RemovesIt() => Assert.Empty(Log(RidingLog.None.Break(May3, null, May3, Noon).Must, May3).Breaks);

    [Fact]
    public void Break_SaidAfterTodaysRide_BeginsTomorrow() =>
        Assert.Equal([new RidingBreak(May3.PlusDays(1), May3.PlusDays(9))], Log(RidingLog.None, May3).Break(May3, May3.PlusDays(9), May3, Noon).Must.Breaks.AsEnumerable());

    [Fact]
    public void Break_ThatTouchesAnother_TakesItsPlace()
    {
        var log = RidingLog.None.Break(May3, null, May3, Noon).Must.Break(May3.PlusDays(4), May3.PlusDays(20), May3, Noon).Must;

        Assert.Equal([new RidingBreak(May3, May3.PlusDays(20))], log.Breaks.AsEnumerable());
    }

    [Theory]
    [InlineData(0, 0, "empty-break")]
    [InlineData(0, -1, "empty-break")]
    [InlineData(0, 401, "far-break")]
    [InlineData(-401, 0, "far-break")]
    public void Break_ThatIsNone_IsRefused(int from, int until, string code) =>
        Assert.Equal(code, RidingLog.None.Break(May3.PlusDays(from), May3.PlusDays(until), May3, Noon).Refused!.Code);

    [Fact]
    public void RideAgain_OnABreak_EndsItToday()
    {
        var log = RidingLog.None.Break(May3, null, May3, Noon).Must;

        Assert.Equal([new RidingBreak(May3, May3.PlusDays(2))], log.RideAgain(May3.PlusDays(2), Noon).Must.Breaks.AsEnumerable());
        Assert.Empty(log.RideAgain(May3, Noon).Must.Breaks);
        Assert.Equal("no-break", RidingLog.None.RideAgain(May3, Noon).Refused!.Code);
    }

    [Theory]
    [InlineData(0, null, null, "pace")]
    [InlineData(7.1, null, null, "pace")]
    [InlineData(double.NaN, null, null, "pace")]
    [InlineData(4, 0.0, null, "distance")]
    [InlineData(4, null, 25.0, "time")]
    public void StatePace_ThatCannotBe_IsRefused(double days, double? km, double? hours, string code) =>
        Assert.Equal(code, RidingLog.None.StatePace(new StatedPace(days, km, hours, May3), Noon).Refused!.Code);

    [Fact]
    public void Undo_EachKindOfEntry_IsAsBefore()
    {
        var before = Log(RidingLog.None, May3, 5);
        RidingLog[] after =
        [
            Log(before, May3, 5, 1, Weather.Wet),
            Log(before, May3.PlusDays(-1), 5),
            before.Break(May3, null, May3, Noon).Must,
            before.StatePace(new StatedPace(4, null, null, May3), Noon).Must,
        ];

        Assert.All(after, a => Logs.AssertSame(before, a.Undo().Must));
        Assert.All(after, a => Assert.Equal("nothing", a.Undo().Must.Undo().Refused!.Code));
        Assert.Equal(["5 km, 1 h on 3 May 2026", "5 km on 2 May 2026", "not riding till further notice", "the stated pace"], after.Select(a => a.Last!.What));
    }

    [Fact]
    public void Undo_RideThatEndedABreak_BringsTheBreakBack()
    {
        var rest = RidingLog.None.Break(May3, May3.PlusDays(30), May3, Noon).Must;

        Assert.Equal(rest.Breaks.AsEnumerable(), Log(rest, May3.PlusDays(3)).Undo().Must.Breaks);
    }

    private static RidingLog Log(RidingLog log, LocalDate day, double? km = null, double? hours = null, Weather weather = Weather.Dry) =>
        log.Log(new RiddenDay(day, km, hours, weather), LocalDate.Max(day, May3), null, Noon).Must;
}
