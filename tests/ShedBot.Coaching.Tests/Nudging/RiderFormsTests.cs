using NodaTime;
using NodaTime.TimeZones;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>What members write into the fields of their settings.</summary>
public sealed class RiderFormsTests
{
    /// <summary>12 am is midnight and 12 pm is noon: ANSI INCITS 310, from memory. The rest is common practice.</summary>
    [Theory]
    [InlineData("18:00", 18, 0)]
    [InlineData(" 7:05 ", 7, 5)]
    [InlineData("18.30", 18, 30)]
    [InlineData("6 pm", 18, 0)]
    [InlineData("6PM", 18, 0)]
    [InlineData("6:30 p.m.", 18, 30)]
    [InlineData("6.30pm", 18, 30)]
    [InlineData("7 am", 7, 0)]
    [InlineData("12 am", 0, 0)]
    [InlineData("12 pm", 12, 0)]
    [InlineData("noon", 12, 0)]
    [InlineData("Midnight", 0, 0)]
    [InlineData("24:00", 0, 0)]
    [InlineData("18", 18, 0)]
    [InlineData("12", 12, 0)]
    [InlineData("0", 0, 0)]
    [InlineData("18 o'clock", 18, 0)]
    public void Time_AsPeopleWriteIt_IsRead(string text, int hour, int minute) => Assert.Equal((new LocalTime(hour, minute), null), RiderForms.Time(text));

    [Theory]
    [InlineData("6", "6 in the morning or in the evening? Write 6 am or 6 pm, or 18:00.")]
    [InlineData("25:00", "I cannot read \"25:00\" as a time of day. Write it like 18:00 or 6 pm.")]
    [InlineData("18:60", "I cannot read \"18:60\" as a time of day. Write it like 18:00 or 6 pm.")]
    [InlineData("13 pm", "I cannot read \"13 pm\" as a time of day. Write it like 18:00 or 6 pm.")]
    [InlineData("", "I cannot read \"\" as a time of day. Write it like 18:00 or 6 pm.")]
    [InlineData("-1", "I cannot read \"-1\" as a time of day. Write it like 18:00 or 6 pm.")]
    [InlineData("٦", "I cannot read \"٦\" as a time of day. Write it like 18:00 or 6 pm.")]
    public void Time_AnythingElse_IsRefusedWithWhatToWrite(string text, string says)
    {
        var refused = RiderForms.Time(text).Refused!;
        Assert.Equal(("time", says), (refused.Code, refused.Say));
    }

    [Theory]
    [InlineData("21:00 to 8:00", 21, 8)]
    [InlineData("10 pm - 7 am", 22, 7)]
    [InlineData("22:00–07:00", 22, 7)]
    [InlineData("21 till 8", 21, 8)]
    [InlineData("13:00 until 14:00", 13, 14)]
    [InlineData("none", 0, 0)]
    public void Quiet_FromAndUntil_AreRead(string text, int from, int until) =>
        Assert.Equal(new KeepQuiet(new QuietHours(new LocalTime(from, 0), new LocalTime(until, 0))), RiderForms.Quiet(text).Must);

    [Theory]
    [InlineData("21:00")]
    [InlineData("9 to 8")]
    [InlineData("21:00 to 21:00")]
    [InlineData("21:00 to 8:00 to 9:00")]
    [InlineData("at night")]
    public void Quiet_AnythingElse_IsRefused(string text) => Assert.Equal("time", RiderForms.Quiet(text).Refused!.Code);

    /// <summary>Every name of the IANA time zone database, as NodaTime carries it, in capitals and with blanks, is that zone.</summary>
    [Fact]
    public void Zone_EveryNameOfTheData_IsThatZone()
    {
        var ids = TzdbDateTimeZoneSource.Default.GetIds().ToList();
        Assert.True(ids.Count > 500);
        Assert.All(ids, id => Assert.Equal(
            TzdbDateTimeZoneSource.Default.CanonicalIdMap[id],
            TzdbDateTimeZoneSource.Default.CanonicalIdMap[((LiveIn)RiderForms.Zone(id.ToUpperInvariant().Replace('_', ' ')).Must).Zone!]));
    }

    /// <summary>Cities and countries of zone.tab in the IANA data.</summary>
    [Theory]
    [InlineData("lisbon", "Europe/Lisbon")]
    [InlineData("New York", "America/New_York")]
    [InlineData("new-york", "America/New_York")]
    [InlineData("São Paulo", "America/Sao_Paulo")]
    [InlineData("St. John's", "America/St_Johns")]
    [InlineData("Port au Prince", "America/Port-au-Prince")]
    [InlineData("buenos aires", "America/Argentina/Buenos_Aires")]
    [InlineData("indianapolis", "America/Indiana/Indianapolis")]
    [InlineData("Asia/Calcutta", "Asia/Calcutta")]
    [InlineData("kathm", "Asia/Kathmandu")]
    [InlineData("japan", "Japan")]
    [InlineData("Kenya", "Africa/Nairobi")]
    [InlineData("utc", "UTC")]
    [InlineData("club", null)]
    public void Zone_ByThePlace_IsFound(string text, string? zone) => Assert.Equal(new LiveIn(zone), RiderForms.Zone(text).Must);

    [Theory]
    [InlineData("Atlantis", "I know no one time zone \"Atlantis\". Name it by its largest city, as in Europe/Lisbon.")]
    [InlineData("sa", "Do you mean ")]
    [InlineData("germany", "Do you mean Europe/Berlin")]
    [InlineData("", "Name it by its largest city")]
    public void Zone_NoneOrSeveral_IsRefusedWithThoseNearIt(string text, string says)
    {
        var refused = RiderForms.Zone(text).Refused!;
        Assert.Equal("zone", refused.Code);
        Assert.Contains(says, refused.Say, StringComparison.Ordinal);
    }

    [Fact]
    public void Zones_WhileSomebodyTypes_AreThoseThatBeginSo()
    {
        Assert.Contains("Europe/Lisbon", RiderForms.Zones("lis"));
        Assert.Contains("Europe/Lisbon", RiderForms.Zones("europe/l"));
        Assert.Empty(RiderForms.Zones(" "));
    }

    [Theory]
    [InlineData("km", Units.Metric)]
    [InlineData(" Miles", Units.Imperial)]
    [InlineData("club", null)]
    public void UnitsOf_AsPeopleWriteThem_AreRead(string text, Units? units) => Assert.Equal(new ThinkIn(units), RiderForms.UnitsOf(text).Must);

    [Fact]
    public void UnitsOf_AnythingElse_IsRefused() =>
        Assert.Equal(("units", "I cannot read \"furlongs\" as units. Write km or miles."), (RiderForms.UnitsOf("furlongs").Refused!.Code, RiderForms.UnitsOf("furlongs").Refused!.Say));
}
