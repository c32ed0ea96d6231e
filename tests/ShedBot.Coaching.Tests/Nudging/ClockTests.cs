using NodaTime;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Service;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>
/// Clocks that are put forward and back, and riders who move. Transitions: IANA time zone database, files europe (EU rule: last Sunday of March and of
/// October at 01:00 UTC), australasia (Lord Howe: half an hour; Samoa left out 30 December 2011) and northamerica (US rule: second Sunday of March, first of November, at 02:00).
/// </summary>
public sealed class ClockTests
{
    private static readonly QuietHours Never = new(LocalTime.Midnight, LocalTime.Midnight);

    [Theory]
    // Lisbon 2026-03-29: 01:00 to 02:00 is left out; 01:30 becomes 02:00 WEST = 01:00 UTC.
    [InlineData("Europe/Lisbon", "2026-03-29", 1, 30, "2026-03-29T01:00:00Z")]
    // Lisbon 2026-10-25: 01:00 to 02:00 comes twice; the first 01:30 is WEST = 00:30 UTC.
    [InlineData("Europe/Lisbon", "2026-10-25", 1, 30, "2026-10-25T00:30:00Z")]
    // New York 2026-03-08: 02:30 becomes 03:00 EDT = 07:00 UTC; 2026-11-01: the first 01:30 is EDT = 05:30 UTC.
    [InlineData("America/New_York", "2026-03-08", 2, 30, "2026-03-08T07:00:00Z")]
    [InlineData("America/New_York", "2026-11-01", 1, 30, "2026-11-01T05:30:00Z")]
    // Lord Howe 2026-10-04 at 02:00 to 02:30: 02:15 becomes 02:30 at UTC+11 = 15:30 UTC of the day before.
    [InlineData("Australia/Lord_Howe", "2026-10-04", 2, 15, "2026-10-03T15:30:00Z")]
    // No transition: Kathmandu is 5:45 ahead.
    [InlineData("Asia/Kathmandu", "2026-06-03", 18, 0, "2026-06-03T12:15:00Z")]
    public void Decide_PreferredTimeAtATransition_IsOnceAndAsWrittenDown(string zone, string day, int hour, int minute, string expected)
    {
        var date = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value;
        var talk = new Talk(Yard.Task("grease", Yard.Calendar(2)));
        talk.Bikes = [Yard.Did(Yard.Rode(Yard.Bike, date.PlusDays(-2)), date.PlusDays(-2))];
        talk.Rider = talk.Rider.MoveTo(zone, default).Must.BeQuiet(Never, default).Must.Prefer(new LocalTime(hour, minute), default);
        var begin = At(date.PlusDays(-1), 12, 0, zone);

        var (at, _) = Assert.Single(talk.Watch(begin, begin.AddDays(2)));

        Assert.Equal(DateTimeOffset.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), at);
    }

    [Fact]
    public void Decide_QuietHourThatComesTwice_IsQuietTwice()
    {
        // Lisbon 2026-10-25: with quiet hours till 01:30, the clock shows 01:30 (00:30 UTC), 01:00 again (01:00 UTC) and 01:30 again (01:30 UTC).
        var date = new LocalDate(2026, 10, 25);
        var talk = DueOn(date);
        talk.Rider = talk.Rider.BeQuiet(new QuietHours(new LocalTime(21, 0), new LocalTime(1, 30)), default).Must.Prefer(new LocalTime(1, 0), default);

        Assert.Null(talk.Look(Utc(date, 1, 10)));
        Assert.Equal(Utc(date, 1, 30), talk.Rider.NextLook);
        Assert.NotNull(talk.Look(Utc(date, 1, 30)));
    }

    [Fact]
    public void Decide_DayThatWasLeftOut_IsSkipped()
    {
        // Samoa had no 30 December 2011: after the 29th came the 31st.
        var date = new LocalDate(2011, 12, 29);
        var talk = DueOn(date.PlusDays(1));
        talk.Rider = talk.Rider.MoveTo("Pacific/Apia", default).Must;

        var (at, _) = Assert.Single(talk.Watch(At(date, 0, 0, "Pacific/Apia"), At(date.PlusDays(4), 0, 0, "Pacific/Apia")));

        Assert.Equal(At(new LocalDate(2011, 12, 31), 18, 0, "Pacific/Apia"), at);
    }

    [Theory]
    [InlineData("Asia/Tokyo", "America/Los_Angeles")]
    [InlineData("America/Los_Angeles", "Asia/Tokyo")]
    [InlineData("Pacific/Auckland", "Pacific/Honolulu")]
    [InlineData("Pacific/Honolulu", "Pacific/Kiritimati")]
    public void Decide_RiderMovesRightAfterAMessage_HasNoSecondOneThatDayByEitherClock(string from, string to)
    {
        var talk = new Talk([.. Enumerable.Range(3, 5).Select(i => Pressing($"t{i}", i))]).Fresh();
        talk.Rider = talk.Rider.MoveTo(from, default).Must;
        var first = At(June3, 18, 0, from);
        Assert.NotNull(talk.Look(first));
        talk.Rider = Nudger.Heard(talk.Rider, first).MoveTo(to, first).Must;

        var second = talk.Watch(first, first.AddDays(3)).First().At;

        Assert.NotEqual(Day(first, from), Day(second, from));
        Assert.NotEqual(Day(first, to), Day(second, to));
        Assert.NotEqual(Day(first, from), Day(second, to));
        Assert.Equal(18, TimeZoneInfo.ConvertTime(second, TimeZoneInfo.FindSystemTimeZoneById(to)).Hour);
    }

    [Fact]
    public void Decide_UnknownZones_CountAsUtc()
    {
        var talk = new Talk(Due("grease", 3)).Fresh();
        talk.ClubZone = "Nowhere/Land";

        Assert.Equal(Utc(June3, 18, 0), Assert.Single(talk.Watch(Utc(June3, 0, 0), Utc(June3, 23, 0))).At);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(26)]
    [InlineData(24 * 400)]
    public void Decide_ClockGoesBack_DoublesNothing(int hours)
    {
        var talk = new Talk(Due("a", 3)).Fresh();
        var now = At(June3, 18);
        Assert.NotNull(talk.Look(now));

        var sent = talk.Watch(now.AddHours(-hours), now.AddHours(-hours).AddDays(2)).Concat(talk.Watch(now, now.AddDays(5)));

        Assert.Empty(sent);
    }

    [Fact]
    public void Decide_ClockWasFarAheadOnce_SpeaksAgainTheNextDay()
    {
        var talk = new Talk(Due("a", 3), Due("b", 4)).Fresh();
        talk.Rider = talk.Rider with { LastAt = At(June3.PlusDays(9000), 18), LastDay = June3.PlusDays(9000) };

        Assert.Equal(At(June3.PlusDays(1), 18), Assert.Single(talk.Watch(At(June3, 17), At(June3.PlusDays(6), 0))).At);
    }

    [Fact]
    public void CatchUp_RestoredFromBeforeTheLastMessage_TellsNothingTwice()
    {
        var talk = new Talk(Pressing("a", 3), Pressing("b", 5), Pressing("c", 9)).Fresh();
        var backup = talk.Rider;
        var last = talk.Watch(At(June3, 0), At(June3.PlusDays(3), 0)).Last().At;
        talk.Rider = Nudger.CatchUp(backup, talk.Bikes, talk.Knowledge, talk.ClubZone, last, At(June3.PlusDays(3), 1));

        var sent = talk.Watch(At(June3.PlusDays(3), 1), At(June3.PlusDays(20), 0));

        Assert.Equal("Due on your bike: c", Assert.Single(sent).Card.Title);
        Assert.Same(talk.Rider, Nudger.CatchUp(talk.Rider, talk.Bikes, talk.Knowledge, talk.ClubZone, last, last));
    }

    [Fact]
    public void Decide_RestoredWithoutCatchingUp_DoublesOneDigestAtMost()
    {
        var talk = new Talk(Due("a", 3), Due("b", 5)).Fresh();
        var backup = talk.Rider;
        talk.Watch(At(June3, 0), At(June3.PlusDays(3), 0));
        talk.Rider = backup;

        Assert.Equal("2 things are due on your bike", Assert.Single(talk.Watch(At(June3.PlusDays(3), 1), At(June3.PlusDays(30), 0))).Card.Title);
    }

    private static Talk DueOn(LocalDate due)
    {
        var talk = new Talk(Yard.Task("grease", Yard.Calendar(2)));
        talk.Bikes = [Yard.Did(Yard.Rode(Yard.Bike, due.PlusDays(-2)), due.PlusDays(-2))];
        return talk;
    }

    private static DateTimeOffset Utc(LocalDate day, int hour, int minute) => new(day.Year, day.Month, day.Day, hour, minute, 0, TimeSpan.Zero);

    private static LocalDate Day(DateTimeOffset at, string zone) => RiderDays.Of(at, DateTimeZoneProviders.Tzdb[zone]);
}
