using CsCheck;
using ShedBot.Trade.Release;

namespace ShedBot.Trade.Tests.Release;

public class SlackTests
{
    private static readonly SlackLever Lever = new(Mm(40), Mm(4));

    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    // Source: screw geometry, pitch / notches; pitches and counts are examples.
    [Theory]
    [InlineData(1.0, 6, 0.167, 3)]
    [InlineData(1.25, 6, 0.208, 3)]
    [InlineData(1.25, 8, 0.156, 3)]
    [InlineData(1.5, 6, 0.25, 2)]
    public void PerNotch_FourNuts_MatchesTable(double pitch, int notches, double axial, int decimals) =>
        Printed.Matches(axial, decimals, new FlowerNut(Mm(pitch), notches).PerNotch.Millimeters);

    // Source: R / b by hand on example sizes.
    [Fact]
    public void SlackPerNotch_ExampleNut_Is1Point67AndSaysHowToMeasure()
    {
        var figure = ReleaseFigures.SlackPerNotch(new FlowerNut(Mm(1), 6), Lever);

        Printed.Matches(1.67, 2, figure.Value.Millimeters);
        Assert.Equal(["1 mm", "6", "40 mm", "4 mm"], figure.Inputs.Select(input => input.Given));
        Assert.All(figure.Inputs, input => Assert.NotEmpty(input.MeasureYours));
    }

    // Source: R / b by hand: wear, a lost 6 mm ball, a 3 mm longer bar.
    [Theory]
    [InlineData(0.1, 1.0)]
    [InlineData(6, 60)]
    [InlineData(3, 30)]
    public void CableFor_ChangeAlongTheBar_IsTenfold(double along, double cable) =>
        Assert.Equal(cable, Lever.CableFor(Mm(along)).Millimeters, 9);

    // Source: R / b by hand: a barrel adjuster's 8 to 10 mm hides 0.8 to 1.0; 2 mm of loose cover eats 0.2.
    [Theory]
    [InlineData(8, 0.8)]
    [InlineData(10, 1.0)]
    [InlineData(2, 0.2)]
    public void LiftFor_LostCable_IsATenth(double cable, double lift) =>
        Assert.Equal(lift, Lever.LiftFor(Mm(cable)).Millimeters, 9);

    // Source: 3 mm over 1/6 mm; three whole turns of a six-notch nut.
    [Theory]
    [InlineData(3, 18)]
    [InlineData(-3, -18)]
    public void NotchesFor_BarOfAnotherLength_CountsNotchesWithTheirDirection(double change, double notches) =>
        Assert.Equal(notches, new FlowerNut(Mm(1), 6).NotchesFor(Mm(change)), 9);

    // Source: the exact cam. For small wear, turning the cam far enough to take it up needs R / b times as much cable, within 3 %.
    [Fact]
    public void CableFor_SmallWear_AgreesWithTheExactCam() =>
        Gen.Select(Gen.Double[3.5, 4.4], Gen.Double[0, 0.5], Gen.Double[0.01, 0.2]).Sample((b, h, wear) =>
        {
            var cam = new HalfRoundCam(Mm(5), Mm(h), Mm(b));
            var turned = Angle.FromRadians(new SlackLever(Mm(40), Mm(b)).CableFor(Mm(wear)).Millimeters / 40);
            return Math.Abs(cam.Lift(turned).Millimeters - wear) < 0.03 * wear;
        });

    // Law: the two directions undo each other.
    [Fact]
    public void LiftFor_OfTheCableItMakes_IsTheLiftStartedWith() =>
        Gen.Select(Gen.Double[20, 80], Gen.Double[0.5, 10], Gen.Double[0, 10]).Sample((radius, b, along) =>
        {
            var lever = new SlackLever(Mm(radius), Mm(b));
            return Math.Abs(lever.LiftFor(lever.CableFor(Mm(along))).Millimeters - along) < 1e-9;
        });

    [Fact]
    public void Constructor_ContactBeyondTheArm_Refuses() =>
        Refusal.Says(
            "contactHalfWidth", "Must be less than the arm radius (4 mm); was 4 mm.", () => _ = new SlackLever(Mm(4), Mm(4)));

    [Theory]
    [InlineData(0)]
    [InlineData(61)]
    public void FlowerNut_NotchesOutsideRange_Refuses(int notches) =>
        Refusal.Says("notches", $"Must be between 1 and 60; was {notches}.", () => _ = new FlowerNut(Mm(1), notches));
}
