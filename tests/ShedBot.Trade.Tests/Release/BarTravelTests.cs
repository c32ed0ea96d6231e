using CsCheck;
using ShedBot.Trade.Figures;
using ShedBot.Trade.Release;

namespace ShedBot.Trade.Tests.Release;

public class BarTravelTests
{
    private static readonly HalfRoundCam Cam = new(Mm(5), Mm(0), Mm(4));

    private static readonly Angle Limit = Degrees(30);

    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static Angle Degrees(double degrees) => Angle.FromDegrees(degrees);

    // Source: plane geometry; r 5, h 0, b 4, pull 21.5 degrees and limit 30 degrees are example values.
    [Theory]
    [InlineData(0, 0, 1.58)]
    [InlineData(10, 0.71, 1.60)]
    [InlineData(15, 1.07, 1.24)]
    [InlineData(20, 1.46, 0.85)]
    public void OnPull_StartedOffNeutral_MatchesTable(double start, double preLift, double left)
    {
        var travel = BarTravel.OnPull(Cam, Degrees(start), Degrees(21.5), Limit);

        Printed.Matches(preLift, 2, travel.PreLift.Millimeters);
        Printed.Matches(left, 2, travel.Left.Millimeters);
    }

    // Source: same geometry; 4 tan t at the limit less 4 tan t at the start falls below the neutral pull only past 10.4 degrees.
    [Theory]
    [InlineData(10.3, false)]
    [InlineData(10.5, true)]
    public void OnPull_AroundBreakEven_LosesTravelOnlyBeyondIt(double start, bool loses)
    {
        var neutral = BarTravel.OnPull(Cam, Degrees(0), Degrees(21.5), Limit).Left;

        Assert.Equal(loses, BarTravel.OnPull(Cam, Degrees(start), Degrees(21.5), Limit).Left < neutral);
    }

    // Source: worked chain by hand: 15 mm pull on a 40 mm arm, then with 2 mm of slack; 0.67 mm a face.
    [Fact]
    public void OnPull_WorkedChain_MatchesWithAndWithoutSlack()
    {
        var full = BarTravel.OnPull(Cam, Degrees(0), ArmSwing.Tangential(Mm(15), Mm(40)), Limit);
        var slack = BarTravel.OnPull(
            Cam, Degrees(0), ArmSwing.Tangential(LeverPull.Usable(Mm(15), Mm(2), Mm(0)), Mm(40)), Limit);

        Printed.Within(1.58, full.Left.Millimeters);
        Printed.Matches(1.35, 2, slack.Left.Millimeters);
        Printed.Matches(0.67, 2, slack.GapPerFace(Mm(0)).Millimeters);
    }

    [Theory]
    [InlineData(8.5, false)]
    [InlineData(8.6, true)]
    public void OnPull_AroundTheLimit_TellsWhenTheSwingIsCutShort(double start, bool cut)
    {
        var travel = BarTravel.OnPull(Cam, Degrees(start), Degrees(21.5), Limit);

        Assert.Equal(cut, travel.SwingCutShort);
        Assert.Equal(cut ? 21.4 : 21.5, travel.Swing.Degrees, 9);
    }

    [Fact]
    public void GapPerFace_LostMotionBeyondTheTravel_IsZero()
    {
        var travel = BarTravel.OnPull(Cam, Degrees(20), Degrees(21.5), Limit);

        Assert.Equal(Length.Zero, travel.GapPerFace(Mm(2)));
        Assert.Equal((travel.Left.Millimeters - 0.2) / 2, travel.GapPerFace(Mm(0.2)).Millimeters, 9);
    }

    [Fact]
    public void OnPull_LimitBeforeTheStart_Refuses() =>
        Refusal.Says(
            "limit", "Must be between 31 ° and 90 °; was 30 °.",
            () => BarTravel.OnPull(Cam, Degrees(31), Degrees(21.5), Limit));

    // Law: spent and left together never exceed the cam's lift at the limit, and neither is negative.
    [Fact]
    public void OnPull_AnyStart_SpentPlusLeftStaysWithinTheLimit() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 60], Gen.Double[0, 30]).Sample((start, pull, room) =>
        {
            var limit = Degrees(start + room);
            var travel = BarTravel.OnPull(Cam, Degrees(start), Degrees(pull), limit);
            return travel.Left >= Length.Zero
                && travel.PreLift >= Length.Zero
                && (travel.PreLift + travel.Left).Millimeters <= Cam.Lift(limit).Millimeters + 1e-9;
        });

    // Law: once the limit cuts the swing, every further degree of wrong start costs release travel.
    [Fact]
    public void OnPull_SwingAlreadyCut_FurtherOffNeutralLeavesLess() =>
        Gen.Select(Gen.Double[8.5, 29], Gen.Double[0.01, 1]).Sample((start, more) =>
            BarTravel.OnPull(Cam, Degrees(start + more), Degrees(21.5), Limit).Left
            < BarTravel.OnPull(Cam, Degrees(start), Degrees(21.5), Limit).Left);

    // Source: the worked chain again, as the rider sees it.
    [Fact]
    public void TravelLeft_ForTheRider_CarriesEveryInputAndHowToMeasureIt()
    {
        var figure = ReleaseFigures.TravelLeft(Cam, Mm(40), Mm(13), Degrees(0), Limit);

        Printed.Matches(1.35, 2, figure.Value.Millimeters);
        Assert.Equal(SourceMark.Derived, figure.Mark);
        Assert.Equal(
            ["13 mm", "40 mm", "5 mm", "0 mm", "4 mm", "0 degrees", "30 degrees"], figure.Inputs.Select(input => input.Given));
        Assert.All(figure.Inputs, input => Assert.NotEmpty(input.MeasureYours));
    }
}
