using CsCheck;
using ShedBot.Trade.Keys;

namespace ShedBot.Trade.Tests.Keys;

public class KeyStrengthTests
{
    private static readonly Length Shaft = Length.FromMillimeters(15);

    // DIN 6888 names steel of at least 60 kgf/mm2.
    private static readonly Pressure KeySteel = Pressure.FromKilogramsForcePerSquareMillimeter(60);

    private static WoodruffKey Key(double width, double height) =>
        WoodruffKey.Find(
            Length.FromMillimeters(width), Length.FromMillimeters(height), Length.FromMillimeters(0.05))!;

    // Source: T = tau b l d/2, T = sigma (h - t1) l d/2 with DIN 6888 sizes; 100 and 150 MPa are example stresses.
    [Theory]
    [InlineData(3, 3.7, 29.0, 21.7, 76.7, 13.0)]
    [InlineData(3, 5, 38.0, 28.5, 100.4, 17.1)]
    [InlineData(4, 5, 50.6, 38.0, 133.9, 21.3)]
    [InlineData(4, 6.5, 62.9, 47.2, 166.4, 26.5)]
    public void Strength_FourKeysOn15Shaft_MatchesTable(
        double width, double height, double area, double shear, double atBreak, double crush)
    {
        var key = Key(width, height);

        Printed.Matches(area, 1, key.ShearArea.SquareMillimeters);
        Printed.Matches(shear, 1, KeyStrength.InShear(key, Shaft, Pressure.FromMegapascals(100)).NewtonMeters);
        Printed.Matches(crush, 1, KeyStrength.InCrush(key, Shaft, Pressure.FromMegapascals(150)).NewtonMeters);
        Printed.Within(atBreak, KeyStrength.AtBreak(key, Shaft, KeySteel).NewtonMeters, 0.001);
    }

    // Source: plane geometry. A key is a slice of a disc, so its flat is the chord 2 sqrt(h (D - h)): this checks the scan's digits.
    [Fact]
    public void Standard_EveryRow_LengthIsTheChordOfItsDisc() =>
        Assert.All(WoodruffKey.Standard, key =>
        {
            var (h, cutter) = (key.Height.Millimeters, key.CutterDiameter.Millimeters);
            Printed.Matches(key.Length.Millimeters, 2, 2 * Math.Sqrt(h * (cutter - h)));
        });

    // Source: plane geometry; how much the tabled length flatters the sheared section, as the documentation says.
    [Fact]
    public void ShearArea_AgainstTheChordAtTheShaft_IsFourToElevenPercentMore() =>
        Assert.All(WoodruffKey.Standard, key =>
        {
            var (t, cutter) = (key.ShaftDepth.Millimeters, key.CutterDiameter.Millimeters);
            var chord = 2 * Math.Sqrt(t * (cutter - t));
            Assert.InRange(1 - (chord / key.Length.Millimeters), 0.04, 0.11);
        });

    // Source: DIN 6888 table: the slot leaves 1.2 mm of a 3 mm key and 1.5 mm of a 4 mm key standing proud.
    [Fact]
    public void Standard_EveryRow_StandsProudByItsWidthClass() =>
        Assert.All(WoodruffKey.Standard, key =>
            Assert.Equal(key.Width.Millimeters < 3.5 ? 1.2 : 1.5, (key.Height - key.ShaftDepth).Millimeters, 9));

    [Fact]
    public void Find_MeasuredWithAVernier_TakesTheNearest() =>
        Assert.Same(
            Key(3, 5),
            WoodruffKey.Find(Length.FromMillimeters(2.95), Length.FromMillimeters(4.9), Length.FromMillimeters(0.2)));

    [Fact]
    public void Find_InchKey_GivesNull() =>
        // Source: ASME B17.2 number 404 is 1/8 x 1/2 in, about 3.18 mm wide and 5.1 mm high.
        Assert.Null(WoodruffKey.Find(Length.FromMillimeters(3.18), Length.FromMillimeters(5.1), Length.FromMillimeters(0.1)));

    // Source: the 3 x 5 row against 12.3 N m; 3 to 5 times on a dumped clutch is common practice, no source.
    [Theory]
    [InlineData(1, true)]
    [InlineData(3, false)]
    [InlineData(5, false)]
    public void Judge_3x5Key_CrushComesFirstAndADumpedClutchIsTooMuch(double shock, bool holds)
    {
        var verdict = KeyVerdict.Judge(
            Key(3, 5), Shaft, Pressure.FromMegapascals(100), Pressure.FromMegapascals(150), Torque.FromNewtonMeters(12.3), shock);

        Assert.Equal(KeyLimit.Crush, verdict.Limit);
        Assert.Equal(holds, verdict.HoldsAlone);
        Printed.Within(17.1 / (12.3 * shock), verdict.Margin);
    }

    // Source: same formulas; with a soft key in a hard hub the shear side gives first.
    [Fact]
    public void Judge_SoftKey_ShearComesFirst() =>
        Assert.Equal(
            KeyLimit.Shear,
            KeyVerdict.Judge(
                Key(3, 5), Shaft, Pressure.FromMegapascals(40), Pressure.FromMegapascals(150), Torque.FromNewtonMeters(5), 1).Limit);

    [Fact]
    public void Judge_ShockBelowOne_Refuses() =>
        Refusal.Says(
            "shockFactor", "Must be between 1 and 10; was 0.9.",
            () => KeyVerdict.Judge(
                Key(3, 5), Shaft, Pressure.FromMegapascals(100), Pressure.FromMegapascals(150), Torque.FromNewtonMeters(5), 0.9));

    // Law: the verdict is never better than either way of failing.
    [Fact]
    public void Judge_AnyStresses_CapacityIsTheLowerOfTheTwo() =>
        Gen.Select(Gen.Int[0, 5], Gen.Double[10, 400], Gen.Double[10, 400]).Sample((row, tau, sigma) =>
        {
            var (key, shear, bearing) =
                (WoodruffKey.Standard[row], Pressure.FromMegapascals(tau), Pressure.FromMegapascals(sigma));
            var verdict = KeyVerdict.Judge(key, Shaft, shear, bearing, Torque.FromNewtonMeters(10), 1);
            return verdict.Capacity <= KeyStrength.InShear(key, Shaft, shear)
                && verdict.Capacity <= KeyStrength.InCrush(key, Shaft, bearing);
        });
}
