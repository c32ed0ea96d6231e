using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Tests.Logbook;

namespace ShedBot.Coaching.Tests.Bikes;

/// <summary>What riders write, and the one form it is kept in. Today is Friday, 1 May 2026.</summary>
public sealed class KindsTests
{
    private static readonly Writer Metric = new(Units.Metric, Bench.Today), Inches = new(Units.Imperial, Bench.Today);

    /// <summary>An inch is 25.4 mm exactly (international yard and pound agreement of 1959); 3/4 in is 19.05 mm, 23/32 in is 18.26 mm in any drill chart.</summary>
    [Theory]
    [InlineData("18.2", "18.2")]
    [InlineData("18,2mm", "18.2")]
    [InlineData("about 18.2 mm", "18.2")]
    [InlineData("1.82 cm", "18.2")]
    [InlineData("3/4 in", "19.05")]
    [InlineData("3/4\"", "19.05")]
    [InlineData("3/4", "19.05")]
    [InlineData("23/32 inch", "18.26")]
    [InlineData("1 1/8 in", "28.58")]
    [InlineData("1-1/8\"", "28.58")]
    [InlineData("0.75 in", "19.05")]
    public void Read_ALength_IsKeptInMillimetres(string text, string kept) => Assert.Equal(kept, Of(BikeSheet.BarLength).Read(text, Metric).Must);

    [Theory]
    [InlineData("0.75", "19.05")]
    [InlineData("18.2", "18.2")]
    public void Read_ANumberAloneOfWhoThinksInInches_IsInchesWhereOnlyThatIsPlausible(string text, string kept) =>
        Assert.Equal(kept, Of(BikeSheet.BarLength).Read(text, Inches).Must);

    [Theory]
    [InlineData("0.75")]
    [InlineData("182 mm")]
    [InlineData("9.9 mm")]
    [InlineData("-18 mm")]
    [InlineData("3/0 in")]
    [InlineData("long enough")]
    [InlineData("18 mm 19 mm")]
    [InlineData("")]
    public void Read_NoPlausibleLength_SaysWhatToWrite(string text) =>
        Assert.Contains("Write a length from 10 to 60 mm, like 35 mm", Of(BikeSheet.BarLength).Read(text, Metric).Refused!.Say, StringComparison.Ordinal);

    [Fact]
    public void Show_ALength_IsInTheRidersUnits()
    {
        Assert.Equal("19.05 mm", Of(BikeSheet.BarLength).Show("19.05", Units.Metric));
        Assert.Equal("0.75 in (19.05 mm)", Of(BikeSheet.BarLength).Show("19.05", Units.Imperial));
    }

    [Theory]
    [InlineData("47 x 38 mm", "47x38")]
    [InlineData("40x40", "40x40")]
    [InlineData("47mm × 38mm", "47x38")]
    [InlineData("4.7 x 3.8 cm", "47x38")]
    [InlineData("47 by 38", "47x38")]
    [InlineData("66cc", "66cc")]
    [InlineData("66 ccm", "66cc")]
    [InlineData("48", "48cc")]
    [InlineData("49.5cc", "49.5cc")]
    public void Read_AnEngine_IsBoreAndStrokeOrWhatItIsSoldAs(string text, string kept) => Assert.Equal(kept, Of(BikeSheet.Engine).Read(text, Metric).Must);

    [Theory]
    [InlineData("660cc")]
    [InlineData("38")]
    [InlineData("4 x 4")]
    [InlineData("big")]
    public void Read_NoSuchEngine_IsRefused(string text) =>
        Assert.Equal(text == "38", Of(BikeSheet.Engine).Read(text, Metric).Refused is null);

    /// <summary>Public tables of tyre sizes under ISO 5775 give these seats; a decimal and a fraction are different rims. The width is the mark in millimetres.</summary>
    [Theory]
    [InlineData("54-559", "54-559")]
    [InlineData("ISO 50 - 559", "50-559")]
    [InlineData("559", "559")]
    [InlineData("26 x 2.125", "54-559")]
    [InlineData("26x2.125\"", "54-559")]
    [InlineData("26 x 1.75", "44-559")]
    [InlineData("26 x 1 3/8", "35-590")]
    [InlineData("26 x 1 1/2", "38-584")]
    [InlineData("26 x 1 3/4", "44-571")]
    [InlineData("24 x 1.75", "44-507")]
    [InlineData("24 x 1 3/8", "35-540")]
    [InlineData("20 x 2.125", "54-406")]
    [InlineData("27 x 1 1/4", "32-630")]
    [InlineData("28 x 1.75", "44-622")]
    [InlineData("28 x 1 1/2", "38-635")]
    [InlineData("29 x 2.1", "53-622")]
    [InlineData("700 x 38c", "38-622")]
    [InlineData("26 x 2", "51-559")]
    [InlineData("26 inch wheels", "26in")]
    [InlineData("26\"", "26in")]
    public void Read_ATyre_IsKeptAsIsoMarksIt(string text, string kept) => Assert.Equal(kept, Of(BikeSheet.Wheel).Read(text, Metric).Must);

    [Theory]
    [InlineData("54-560")]
    [InlineData("26 x 9")]
    [InlineData("33 inch")]
    [InlineData("round")]
    public void Read_NoTyre_SaysWhereToLook(string text) => Assert.Contains("54-559 or 26 x 2.125", Of(BikeSheet.Wheel).Read(text, Metric).Refused!.Say, StringComparison.Ordinal);

    [Fact]
    public void IsExact_OfWhatAWheelGoesBy_IsFalse()
    {
        Assert.False(Of(BikeSheet.Wheel).IsExact("26in"));
        Assert.True(Of(BikeSheet.Wheel).IsExact("54-559"));
        Assert.False(Of(BikeSheet.Engine).IsExact("66cc"));
    }

    /// <summary>Arithmetic: 4 % oil is 1 in 25, and so are 40 ml in a litre.</summary>
    [Theory]
    [InlineData("24:1", "24:1")]
    [InlineData("1:24", "24:1")]
    [InlineData("1 to 32", "32:1")]
    [InlineData("24/1", "24:1")]
    [InlineData("25", "25:1")]
    [InlineData("4 %", "25:1")]
    [InlineData("40 ml per litre", "25:1")]
    public void Read_Oil_IsFuelToOnePartOfOil(string text, string kept) => Assert.Equal(kept, Of(BikeSheet.Oil).Read(text, Metric).Must);

    [Theory]
    [InlineData("a capful")]
    [InlineData("2:3")]
    [InlineData("500:1")]
    [InlineData("5")]
    public void Read_NoRatio_IsRefused(string text) => Assert.Contains("24:1", Of(BikeSheet.Oil).Read(text, Metric).Refused!.Say, StringComparison.Ordinal);

    [Theory]
    [InlineData(BikeSheet.RearSprocket, "44 teeth", "44")]
    [InlineData(BikeSheet.RearSprocket, "44T", "44")]
    [InlineData(BikeSheet.SmallSprocket, "10", "10")]
    [InlineData(BikeSheet.Primary, "20/82", "82/20")]
    [InlineData(BikeSheet.Primary, "82 and 20 teeth", "82/20")]
    [InlineData(BikeSheet.Key, "3 x 5 mm", "3x5")]
    [InlineData(BikeSheet.Key, "1/8 x 3/16 in", "3.18x4.76")]
    [InlineData(BikeSheet.MainJet, "No. 70", "70")]
    [InlineData(BikeSheet.Carburettor, " slide,  as it came ", "slide,  as it came")]
    public void Read_AnyOther_IsKeptInOneForm(string field, string text, string kept) => Assert.Equal(kept, Of(field).Read(text, Metric).Must);

    [Theory]
    [InlineData("yesterday", "2026-04-30")]
    [InlineData("march 2026", "2026-03-01")]
    [InlineData("in june", "2025-06-01")]
    [InlineData("2026-02", "2026-02-01")]
    [InlineData("3 months ago", "2026-02-01")]
    [InlineData("about 3 months ago", "2026-02-01")]
    [InlineData("around march", "2026-03-01")]
    [InlineData("a year ago", "2025-05-01")]
    [InlineData("12 march", "2026-03-12")]
    [InlineData("2026-04-30", "2026-04-30")]
    public void Read_ADate_IsADayThatHasBeen(string text, string kept) => Assert.Equal(kept, Of(BikeSheet.PadsDate).Read(text, Metric).Must);

    [Theory]
    [InlineData("tomorrow")]
    [InlineData("2027-01")]
    [InlineData("1066-10")]
    [InlineData("when it was new")]
    [InlineData("2026-13")]
    [InlineData("march 99999")]
    public void Read_NoSuchDay_IsRefused(string text) => Assert.NotNull(Of(BikeSheet.PadsDate).Read(text, Metric).Refused);

    [Theory]
    [InlineData(BikeSheet.OuterBearing, "6202 2RS", "sealed")]
    [InlineData(BikeSheet.OuterBearing, "ZZ", "shielded")]
    [InlineData(BikeSheet.OuterBearing, "rubber seals", "sealed")]
    [InlineData(BikeSheet.OuterBearing, "I can see the balls", "open")]
    [InlineData(BikeSheet.OuterBearing, "2", "sealed")]
    [InlineData(BikeSheet.ReturnSpring, "yes", "fitted")]
    [InlineData(BikeSheet.ReturnSpring, "no", "none")]
    [InlineData(BikeSheet.ReturnSpring, "not fitted", "none")]
    [InlineData(BikeSheet.PadsKind, "cheap ones", "hard-cheap")]
    [InlineData(BikeSheet.PadsKind, "came with it", "ordinary")]
    public void Read_AChoice_IsByNumberOrWords(string field, string text, string kept) => Assert.Equal(kept, Of(field).Read(text, Metric).Must);

    [Theory]
    [InlineData("purple")]
    [InlineData("")]
    [InlineData("9")]
    public void Read_NoChoice_NamesThemAll(string text) => Assert.Contains("1 Z or ZZ", Of(BikeSheet.OuterBearing).Read(text, Metric).Refused!.Say, StringComparison.Ordinal);

    /// <summary>Whatever is kept reads back as itself, so that a form can be filled in beforehand with what is known.</summary>
    [Theory]
    [InlineData(BikeSheet.BarLength, "18.2")]
    [InlineData(BikeSheet.Engine, "47x38")]
    [InlineData(BikeSheet.Engine, "66cc")]
    [InlineData(BikeSheet.Wheel, "54-559")]
    [InlineData(BikeSheet.Wheel, "559")]
    [InlineData(BikeSheet.Wheel, "26in")]
    [InlineData(BikeSheet.Oil, "24:1")]
    [InlineData(BikeSheet.Primary, "82/20")]
    [InlineData(BikeSheet.Key, "3.18x4.76")]
    [InlineData(BikeSheet.PadsDate, "2026-03-01")]
    [InlineData(BikeSheet.ReturnSpring, "none")]
    public void Read_WhatIsKept_IsTheSame(string field, string kept)
    {
        Assert.Equal(kept, Of(field).Read(kept, Metric).Must);
        Assert.Equal(kept, Of(field).Read(kept, Inches).Must);
    }

    private static FieldKind Of(string field) => BikeSheet.Find(Bench.Knowledge, field)!.Kind;
}
