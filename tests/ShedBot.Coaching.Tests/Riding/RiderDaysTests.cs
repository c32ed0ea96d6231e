using System.Globalization;
using CsCheck;
using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

/// <summary>
/// Days of a zone at known transitions of the IANA time zone database (files europe, northamerica, southamerica, australasia and asia; the instants are
/// from memory), and against the zones of the operating system where it has them.
/// </summary>
public sealed class RiderDaysTests
{
    [Theory]
    // Lisbon: the last Sunday of March and of October, 01:00 UTC. In summer the day begins an hour earlier.
    [InlineData("Europe/Lisbon", "2026-03-28T23:59:59Z", "2026-03-28")]
    [InlineData("Europe/Lisbon", "2026-03-29T23:00:00Z", "2026-03-30")]
    [InlineData("Europe/Lisbon", "2026-10-24T23:00:00Z", "2026-10-25")]
    [InlineData("Europe/Lisbon", "2026-10-25T23:30:00Z", "2026-10-25")]
    // New York: the second Sunday of March at 07:00 UTC, the first of November at 06:00 UTC.
    [InlineData("America/New_York", "2026-03-08T04:59:59Z", "2026-03-07")]
    [InlineData("America/New_York", "2026-03-09T04:00:00Z", "2026-03-09")]
    [InlineData("America/New_York", "2026-11-01T04:00:00Z", "2026-11-01")]
    [InlineData("America/New_York", "2026-11-02T04:59:59Z", "2026-11-01")]
    // Apia went over the date line at 2011-12-30 10:00 UTC: there was no 30 December.
    [InlineData("Pacific/Apia", "2011-12-30T09:59:59Z", "2011-12-29")]
    [InlineData("Pacific/Apia", "2011-12-30T10:00:00Z", "2011-12-31")]
    // Lord Howe moves by half an hour: from +11 to +10:30 on 2026-04-04 15:00 UTC.
    [InlineData("Australia/Lord_Howe", "2026-04-04T13:00:00Z", "2026-04-05")]
    [InlineData("Australia/Lord_Howe", "2026-04-05T13:29:59Z", "2026-04-05")]
    [InlineData("Australia/Lord_Howe", "2026-04-05T13:30:00Z", "2026-04-06")]
    // Kathmandu is 5 hours 45 minutes ahead.
    [InlineData("Asia/Kathmandu", "2026-05-03T18:14:59Z", "2026-05-03")]
    [InlineData("Asia/Kathmandu", "2026-05-03T18:15:00Z", "2026-05-04")]
    public void Of_AroundAKnownTransition_IsTheDayOfTheZone(string zone, string at, string day) => Assert.Equal(
        LocalDatePattern.Iso.Parse(day).Value, RiderDays.Of(DateTimeOffset.Parse(at, CultureInfo.InvariantCulture), DateTimeZoneProviders.Tzdb[zone]));

    [Theory]
    // São Paulo's clocks went from midnight to one on 2018-11-04: the day began at one o'clock.
    [InlineData("America/Sao_Paulo", "2018-11-04", "2018-11-04T03:00:00Z")]
    [InlineData("America/Sao_Paulo", "2018-11-03", "2018-11-03T03:00:00Z")]
    [InlineData("Europe/Lisbon", "2026-03-30", "2026-03-29T23:00:00Z")]
    public void Begins_WithAndWithoutMidnight_IsTheFirstMoment(string zone, string day, string begins) => Assert.Equal(
        DateTimeOffset.Parse(begins, CultureInfo.InvariantCulture), RiderDays.Begins(LocalDatePattern.Iso.Parse(day).Value, DateTimeZoneProviders.Tzdb[zone]));

    [Fact]
    public void Of_AnyInstantInZonesOfTheSystem_IsTheSystemsDay()
    {
        var zones = new[] { "Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu", "Pacific/Kiritimati" }
            .Where(z => TimeZoneInfo.TryFindSystemTimeZoneById(z, out _)).ToArray();
        Gen.Select(Gen.Int[0, Math.Max(0, zones.Length - 1)], Gen.Long[1_577_836_800, 1_798_761_600]).Sample((z, seconds) =>
        {
            if (zones.Length == 0) return;
            var at = DateTimeOffset.FromUnixTimeSeconds(seconds);
            var system = TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(zones[z]));
            Assert.Equal(LocalDate.FromDateTime(system.DateTime), RiderDays.Of(at, DateTimeZoneProviders.Tzdb[zones[z]]));
        });
    }
}
