using CsCheck;
using ShedBot.Trade.Engine;

namespace ShedBot.Trade.Tests.Engine;

public class CylinderTests
{
    // Source: V = pi/4 B^2 S by hand; the sizes are the widely quoted kit pairs, from memory.
    [Theory]
    [InlineData(47, 38, 65.93)]
    [InlineData(40, 38, 47.75)]
    [InlineData(38, 40, 45.36)]
    [InlineData(47, 40, 69.40)]
    public void Displacement_KitSizes_MatchesTable(double bore, double stroke, double cc) =>
        Printed.Matches(
            cc, 2, Cylinder.Displacement(Length.FromMillimeters(bore), Length.FromMillimeters(stroke)).CubicCentimeters);

    // Source: the same formula; a gasket is a very short cylinder.
    [Fact]
    public void Displacement_GasketHalfAMillimetreThinner_Takes867CubicMillimetres() =>
        Printed.Matches(
            0.867, 3, Cylinder.Displacement(Length.FromMillimeters(47), Length.FromMillimeters(0.5)).CubicCentimeters);

    // Source: definition, (65.93 + 11) / 11.
    [Fact]
    public void CompressionRatio_ElevenCcHead_MatchesTable() =>
        Printed.Matches(
            6.994, 3, Cylinder.CompressionRatio(Volume.FromCubicCentimeters(65.93), Volume.FromCubicCentimeters(11)));

    // Source: definition, 2 S n / 60.
    [Theory]
    [InlineData(5000, 6.33)]
    [InlineData(6000, 7.60)]
    public void MeanPistonSpeed_Stroke38_MatchesTable(double rpm, double metresPerSecond) =>
        Printed.Matches(
            metresPerSecond, 2,
            Cylinder.MeanPistonSpeed(Length.FromMillimeters(38), RotationalSpeed.FromRevolutionsPerMinute(rpm)).MetersPerSecond);

    // Source: 9549 x kW / rpm, the workshop form of P = 2 pi n T in engineering handbooks.
    [Theory]
    [InlineData(1.5, 5000, 2.86)]
    [InlineData(2.0, 6000, 3.18)]
    public void FromPower_KitClaims_MatchesTable(double kilowatts, double rpm, double newtonMetres)
    {
        var torque = EngineTorque.FromPower(
            Power.FromKilowatts(kilowatts), RotationalSpeed.FromRevolutionsPerMinute(rpm)).NewtonMeters;

        Printed.Within(newtonMetres, torque);
        Printed.Within(9549 * kilowatts / rpm, torque, 1e-4);
    }

    [Fact]
    public void Displacement_ZeroBore_SaysTheLimitAndWhatWasGiven() =>
        Refusal.Says(
            "bore", "Must be more than 0; was 0 mm.", () => Cylinder.Displacement(Length.FromMillimeters(0), Length.FromMillimeters(38)));

    // The range checks lean on this: the unit library makes no endless quantity and none that is not a number.
    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NaN)]
    public void Displacement_NotANumberOrEndless_NeverGetsAsFarAsALength(double bore) =>
        Assert.Throws<ArgumentException>(() => Length.FromMillimeters(bore));

    [Fact]
    public void MeanPistonSpeed_NegativeSpeed_Refuses() =>
        Refusal.Says(
            "engineSpeed", "Must be 0 or more; was -1 rpm.",
            () => Cylinder.MeanPistonSpeed(Length.FromMillimeters(38), RotationalSpeed.FromRevolutionsPerMinute(-1)));

    // Law: twice the bore is four times the volume, in whatever unit the bore was given.
    [Fact]
    public void Displacement_TwiceTheBoreInInches_IsFourfold() =>
        Gen.Select(Gen.Double[10, 100], Gen.Double[10, 100]).Sample((bore, stroke) =>
        {
            var one = Cylinder.Displacement(Length.FromMillimeters(bore), Length.FromMillimeters(stroke));
            var two = Cylinder.Displacement(Length.FromInches(2 * bore / 25.4), Length.FromMillimeters(stroke));
            return Math.Abs((two / one) - 4) < 1e-9;
        });
}
