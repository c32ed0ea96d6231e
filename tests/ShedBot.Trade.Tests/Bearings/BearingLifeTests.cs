using CsCheck;
using ShedBot.Trade.Bearings;

namespace ShedBot.Trade.Tests.Bearings;

public class BearingLifeTests
{
    // Rating as listed in one bearing data page; makers differ, so it is an argument everywhere.
    private static readonly Force Rating = Force.FromKilonewtons(7.6);

    private static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);

    // Source: ISO 281 basic rating life, (C/P)^3.
    [Theory]
    [InlineData(1.0, 1220, 439, 0, 5997)]
    [InlineData(1.5, 5000, 130, 0, 434)]
    [InlineData(2.0, 5000, 54.9, 1, 183)]
    public void Life_ThreeLoads_MatchesTable(double kilonewtons, double rpm, double millionTurns, int decimals, double hours)
    {
        var load = Force.FromKilonewtons(kilonewtons);

        Printed.Matches(millionTurns, decimals, BearingLife.MillionTurns(Rating, load));
        Printed.Matches(hours, 0, BearingLife.RunningTime(Rating, load, Rpm(rpm)).Hours);
    }

    // Source: the same page prints the rating as 1709 lbf.
    [Fact]
    public void Rating_InPounds_IsTheSamePrintedRating() => Printed.Within(1709, Rating.PoundsForce, 0.001);

    // Law of the formula: twice the load is an eighth of the life.
    [Fact]
    public void MillionTurns_TwiceTheLoad_IsAnEighth() =>
        Gen.Double[0.1, 1.9].Sample(load =>
        {
            var one = BearingLife.MillionTurns(Rating, Force.FromKilonewtons(load));
            return Math.Abs((one / BearingLife.MillionTurns(Rating, Force.FromKilonewtons(2 * load))) - 8) < 1e-9;
        });

    // Source: ISO 281 limits the formula to half the dynamic rating.
    [Fact]
    public void MillionTurns_AtAndAboveHalfTheRating_TakesThenRefuses()
    {
        Assert.Equal(8, BearingLife.MillionTurns(Rating, Force.FromKilonewtons(3.8)), 9);
        Refusal.Says(
            "load", "Must be at most half the dynamic rating (3.8 kN); was 3.81 kN.",
            () => BearingLife.MillionTurns(Rating, Force.FromKilonewtons(3.81)));
    }

    [Fact]
    public void RunningTime_StandingStill_Refuses() =>
        Refusal.Says(
            "speed", "Must be more than 0; was 0 rpm.",
            () => BearingLife.RunningTime(Rating, Force.FromKilonewtons(1), Rpm(0)));

    // Source: ISO 15, dimension series 02: 15 x 35 x 11 mm. 6201 (12 x 32 x 10) and 6203 (17 x 40 x 12) are its neighbours.
    [Theory]
    [InlineData(15, 35, 11, true)]
    [InlineData(15.1, 34.9, 11.1, true)]
    [InlineData(12, 32, 10, false)]
    [InlineData(17, 40, 12, false)]
    [InlineData(15, 35, 14, false)]
    public void Matches_MeasuredBearing_KnowsThe6202(double bore, double outer, double width, bool expected) =>
        Assert.Equal(
            expected,
            BallBearing.Size6202.Matches(
                Length.FromMillimeters(bore), Length.FromMillimeters(outer), Length.FromMillimeters(width),
                Length.FromMillimeters(0.2)));
}
