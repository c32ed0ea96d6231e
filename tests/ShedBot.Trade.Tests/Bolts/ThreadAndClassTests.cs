using ShedBot.Trade.Bolts;
using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Tests.Bolts;

public class ThreadAndClassTests
{
    // Source: ISO 261 coarse pitches.
    [Theory]
    [InlineData(0.8, "M5")]
    [InlineData(1.0, "M6")]
    [InlineData(1.25, "M8")]
    [InlineData(1.5, "M10")]
    public void FromPitch_CoarsePitch_NamesTheThread(double pitch, string name) =>
        Assert.Equal(name, MetricThread.FromPitch(Length.FromMillimeters(pitch))?.Name);

    [Theory]
    [InlineData(0.7)]
    [InlineData(0.9)]
    [InlineData(1.1)]
    [InlineData(1.75)]
    public void FromPitch_OtherPitch_GivesNull(double pitch) =>
        Assert.Null(MetricThread.FromPitch(Length.FromMillimeters(pitch)));

    // Source: ISO 898-1 proof stresses, from memory; an unmarked stud is taken as the weakest by common practice.
    [Theory]
    [InlineData(null, 225)]
    [InlineData("  ", 225)]
    [InlineData("4.6", 225)]
    [InlineData("4.8", 310)]
    [InlineData("5.8", 380)]
    [InlineData(" 8.8 ", 580)]
    [InlineData("10.9", 830)]
    public void FromMarking_HeadMarking_GivesItsProofStress(string? marking, double megapascals) =>
        Assert.Equal(megapascals, PropertyClass.FromMarking(marking)!.ProofStress.Megapascals, 9);

    [Fact]
    public void FromMarking_UnknownMarking_GivesNull() => Assert.Null(PropertyClass.FromMarking("A2-70"));

    // Rule: 1.5 d at least, 2 d better; common practice, no source.
    [Theory]
    [InlineData(8.99, EngagementVerdict.TooShort)]
    [InlineData(9.0, EngagementVerdict.Enough)]
    [InlineData(11.99, EngagementVerdict.Enough)]
    [InlineData(12.0, EngagementVerdict.Good)]
    public void InAluminium_M6_JudgesBothBounds(double engaged, EngagementVerdict verdict) =>
        Assert.Equal(verdict, ThreadEngagement.InAluminium(MetricThread.M6, Length.FromMillimeters(engaged)));

    [Fact]
    public void LeastInAluminium_M6_IsNineMillimetresByCommonPractice()
    {
        var figure = ThreadEngagement.LeastInAluminium(MetricThread.M6);

        Assert.Equal(9, figure.Value.Millimeters, 9);
        Assert.Equal(SourceMark.CommonPractice, figure.Mark);
        Assert.Equal(["6 mm"], figure.Inputs.Select(input => input.Given));
    }
}
