using CsCheck;
using ShedBot.Trade.Casing;
using ShedBot.Trade.Release;

namespace ShedBot.Trade.Tests.Release;

public class LeverAndArmTests
{
    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    // Source: lever geometry by hand, 15 x 60 / 80.
    [Fact]
    public void CablePull_ExampleLever_Is11Point25() =>
        Printed.Matches(11.25, 2, LeverPull.CablePull(Mm(15), Mm(60), Mm(80)).Millimeters);

    [Theory]
    [InlineData(15, 2, 0, 13)]
    [InlineData(15, 2, 1.5, 11.5)]
    [InlineData(3, 2, 2, 0)]
    public void Usable_SlackAndGive_AreTakenOffAndNeverBelowZero(double pull, double slack, double give, double usable) =>
        Assert.Equal(usable, LeverPull.Usable(Mm(pull), Mm(slack), Mm(give)).Millimeters, 9);

    // Source: theta = p / R for a 40 mm example arm.
    [Theory]
    [InlineData(10, 14.3, 1)]
    [InlineData(15, 21.49, 2)]
    [InlineData(18, 25.8, 1)]
    public void Tangential_40Arm_MatchesTable(double pull, double degrees, int decimals) =>
        Printed.Matches(degrees, decimals, ArmSwing.Tangential(Mm(pull), Mm(40)).Degrees);

    // Source: chord of a circle, 2 asin(15 / 80).
    [Fact]
    public void Chord_40Arm_Is21Point61() => Printed.Matches(21.61, 2, ArmSwing.Chord(Mm(15), Mm(40)).Degrees);

    // Law: a chord is shorter than its arc, so the same pull turns the arm a little further; under 1 % up to 25 degrees.
    [Fact]
    public void Chord_AnyUsualPull_IsAtLeastTangentialAndNearIt() =>
        Gen.Select(Gen.Double[0.1, 17], Gen.Double[40, 60]).Sample((pull, radius) =>
        {
            var (arc, chord) = (ArmSwing.Tangential(Mm(pull), Mm(radius)), ArmSwing.Chord(Mm(pull), Mm(radius)));
            return chord >= arc && chord.Degrees <= 1.01 * arc.Degrees;
        });

    [Fact]
    public void Chord_PullLongerThanTheArmCanFollow_Refuses() =>
        Refusal.Says(
            "usablePull", "Must be at most the arm's whole reach (80 mm); was 81 mm.", () => ArmSwing.Chord(Mm(81), Mm(40)));

    // Source: lever rule by hand: F 500, b 4, R 40, cam 0.6 to 0.8; casing 0.73 to 0.83; lever 12 / 75.
    [Theory]
    [InlineData(0.8, 62, 0.83, 75, 12)]
    [InlineData(0.6, 83, 0.73, 114, 18)]
    public void Forces_ExampleSpring_MatchTheWorkedChain(
        double camEfficiency, double atArm, double casing, double atLever, double atHand)
    {
        var arm = ReleaseForce.AtArm(Force.FromNewtons(500), new SlackLever(Mm(40), Mm(4)), camEfficiency);
        var lever = arm / casing;

        Assert.Equal(atArm, arm.Newtons, 0.51);
        Assert.Equal(atLever, lever.Newtons, 0.51);
        Assert.Equal(atHand, ReleaseForce.AtHand(lever, Mm(12), Mm(75)).Newtons, 0.51);
    }

    // Source: capstan equation; an oiled casing bent half a turn is the 0.73 of the worked chain.
    [Fact]
    public void Forces_ThroughAnOiledHalfTurn_NeedTheSamePullAtTheLever() =>
        Printed.Within(
            114,
            Capstan.PullAtLever(Force.FromNewtons(83.33), CasingFriction.Oiled, Angle.FromDegrees(180)).Newtons);

    // Source: virtual work. Without friction the cable's work equals the spring's over the first small turn of the arm.
    [Fact]
    public void AtArm_Frictionless_DoesTheSpringsWork()
    {
        var cam = new HalfRoundCam(Mm(5), Mm(0.5), Mm(4));
        var small = Angle.FromRadians(1e-5);
        var pull = ReleaseForce.AtArm(Force.FromNewtons(500), new SlackLever(Mm(40), Mm(4)), 1);

        Printed.Within(
            500 * cam.Lift(small).Millimeters, pull.Newtons * 40 * small.Radians, 1e-4);
    }

    [Fact]
    public void AtArm_EfficiencyAboveOne_Refuses() =>
        Refusal.Says(
            "camEfficiency", "Must be more than 0 and at most 1; was 1.2.",
            () => ReleaseForce.AtArm(Force.FromNewtons(500), new SlackLever(Mm(40), Mm(4)), 1.2));
}
