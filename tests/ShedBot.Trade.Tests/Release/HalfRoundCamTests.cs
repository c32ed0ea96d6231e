using CsCheck;
using ShedBot.Trade.Release;

namespace ShedBot.Trade.Tests.Release;

public class HalfRoundCamTests
{
    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static HalfRoundCam Cam(double radius, double offset, double halfWidth) =>
        new(Mm(radius), Mm(offset), Mm(halfWidth));

    private static double Lift(HalfRoundCam cam, double degrees) => cam.Lift(Angle.FromDegrees(degrees)).Millimeters;

    // Source: plane geometry of a flat against a flat-ended bar; r 5, h 0.5 and b are example sizes.
    [Theory]
    [InlineData(4, 0.35, 0.71, 1.09, 1.49, 1.92, 2.39)]
    [InlineData(3, 0.26, 0.54, 0.82, 1.12, 1.45, 1.81)]
    [InlineData(2, 0.18, 0.36, 0.55, 0.76, 0.98, 1.23)]
    public void Lift_SharpRoundedAndDomedTip_MatchesTable(
        double b, double at5, double at10, double at15, double at20, double at25, double at30)
    {
        var cam = Cam(5, 0.5, b);

        Printed.Matches(at5, 2, Lift(cam, 5));
        Printed.Matches(at10, 2, Lift(cam, 10));
        Printed.Matches(at15, 2, Lift(cam, 15));
        Printed.Matches(at20, 2, Lift(cam, 20));
        Printed.Matches(at25, 2, Lift(cam, 25));
        Printed.Matches(at30, 2, Lift(cam, 30));
    }

    // Source: the same geometry, exact half-round; at 40 degrees the edge is past the corner (5 sin 40).
    [Theory]
    [InlineData(10, 0.705, 3)]
    [InlineData(21.5, 1.576, 3)]
    [InlineData(30, 2.31, 2)]
    [InlineData(40, 3.21, 2)]
    public void Lift_ExactHalfRound_MatchesTable(double degrees, double lift, int decimals) =>
        Printed.Matches(lift, decimals, Lift(Cam(5, 0, 4), degrees));

    // Source: 3-4-5 triangle: for r 5, h 0, b 4 the edge reaches the bar at acos(4/5), where both forms give 3.
    [Fact]
    public void CornerAngle_ThreeFourFive_Is36Point87AndLiftsThree()
    {
        var cam = Cam(5, 0, 4);

        Assert.Equal(36.8699, cam.CornerAngle.Degrees, 4);
        Assert.Equal(3, cam.Lift(cam.CornerAngle).Millimeters, 9);
    }

    // Source: geometry; the round of the shaft is h + (r - h) from the flat, and past acos(h/r) the bar rides on it.
    [Theory]
    [InlineData(84.3, 4.5)]
    [InlineData(90, 4.5)]
    public void Lift_EdgeOverTheTop_StaysAtTheMost(double degrees, double lift)
    {
        Assert.Equal(lift, Lift(Cam(5, 0.5, 4), degrees), 9);
        Assert.Equal(lift, Cam(5, 0.5, 4).MaxLift.Millimeters, 9);
    }

    // Source: brute force. The cut shaft is sampled as a cloud of rim and flat points, turned, and the highest point under the bar is taken.
    [Theory]
    [InlineData(5, 0.5, 4, 20)]
    [InlineData(5, 0.5, 4, 40)]
    [InlineData(5, 0.5, 2, 20)]
    [InlineData(5, 0, 4, 21.5)]
    [InlineData(5, 1, 3, 41)]
    [InlineData(5, 1, 3, 42)]
    [InlineData(6, 1.5, 4.5, 80)]
    public void Lift_AgainstSampledOutline_Agrees(double r, double h, double b, double degrees)
    {
        var highest = Outline(r, h)
            .Select(p => Turn(p, degrees * Math.PI / 180))
            .Where(p => Math.Abs(p.Y) <= b)
            .Max(p => p.X);

        Assert.Equal(highest - h, Lift(Cam(r, h, b), degrees), 0.002);
    }

    // Law: more arm, more lift; never beyond the most; a wider contact never lifts less.
    [Fact]
    public void Lift_AnyCam_GrowsWithTheAngleAndStaysBelowTheMost() =>
        Gen.Select(Gen.Double[2, 10], Gen.Double[0, 0.9], Gen.Double[0.05, 1], Gen.Double[0, 89], Gen.Double[0, 1])
            .Sample((r, offsetShare, widthShare, degrees, step) =>
            {
                var cam = Cam(r, r * offsetShare, r * widthShare);
                var narrower = Cam(r, r * offsetShare, r * widthShare / 2);
                var here = Lift(cam, degrees);
                return Lift(cam, degrees + step) >= here - 1e-9
                    && here <= cam.MaxLift.Millimeters + 1e-9
                    && Lift(narrower, degrees) <= here + 1e-9;
            });

    // Source: Pythagoras. The edge lies r from the axis, so when it comes under the bar's rim, b off centre, it stands sqrt(r^2 - b^2) out;
    // the flat's form and the corner's form must both give that.
    [Fact]
    public void Lift_AtTheCorner_IsWhatPythagorasSaysFromBothSides() =>
        Gen.Select(Gen.Double[2, 10], Gen.Double[0, 0.6], Gen.Double[0.1, 0.7]).Sample((r, offsetShare, widthShare) =>
        {
            var (h, b) = (r * offsetShare, r * widthShare);
            var cam = Cam(r, h, b);
            var (corner, expected) = (cam.CornerAngle.Degrees, Math.Sqrt((r * r) - (b * b)) - h);
            return Math.Abs(Lift(cam, corner + 1e-7) - expected) < 1e-6
                && Math.Abs(Lift(cam, corner - 1e-7) - expected) < 1e-6;
        });

    [Fact]
    public void CornerAngle_BarWiderThanTheFlat_IsZeroFromTheStart()
    {
        Assert.Equal(0, Cam(5, 0.5, 5).CornerAngle.Degrees, 9);
        Assert.Equal(0, Lift(Cam(5, 0.5, 5), 0), 9);
    }

    // Source: the table above; a tip worn from full width to a dome of half the width gives about half the lift.
    [Fact]
    public void Lift_TipWornToHalfItsWidth_IsAboutHalved() =>
        Assert.InRange(Lift(Cam(5, 0.5, 2), 20) / Lift(Cam(5, 0.5, 4), 20), 0.50, 0.52);

    [Fact]
    public void Lift_BeyondNinety_Refuses() =>
        Refusal.Says("turned", "Must be between 0 ° and 90 °; was 91 °.", () => Lift(Cam(5, 0, 4), 91));

    [Fact]
    public void Constructor_FlatOutsideTheShaft_Refuses() =>
        Refusal.Says("flatOffset", "Must be less than the radius (5 mm); was 5 mm.", () => _ = Cam(5, 5, 4));

    [Fact]
    public void Constructor_ContactWiderThanTheShaft_Refuses() =>
        Refusal.Says("contactHalfWidth", "Must be at most the radius (5 mm); was 5.1 mm.", () => _ = Cam(5, 0, 5.1));

    private static IEnumerable<(double X, double Y)> Outline(double r, double h)
    {
        const int points = 40000;
        var half = Math.Acos(h / r);
        var w = Math.Sqrt((r * r) - (h * h));
        for (var i = 0; i <= points; i++)
        {
            var rim = half + ((2 * (Math.PI - half)) * i / points);
            yield return (r * Math.Cos(rim), r * Math.Sin(rim));
            yield return (h, w * ((2.0 * i / points) - 1));
        }
    }

    private static (double X, double Y) Turn((double X, double Y) p, double t) =>
        ((p.X * Math.Cos(t)) - (p.Y * Math.Sin(t)), (p.X * Math.Sin(t)) + (p.Y * Math.Cos(t)));
}
