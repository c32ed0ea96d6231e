using CsCheck;
using ShedBot.Trade.Clutch;

namespace ShedBot.Trade.Tests.Clutch;

public class ClutchTorqueTests
{
    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    // Source: uniform wear and uniform pressure formulas, Shigley and Juvinall and Marshek, clutch chapters. Ring sizes are examples.
    [Theory]
    [InlineData(250, 6.91, 7.00)]
    [InlineData(350, 9.68, 9.79)]
    [InlineData(450, 12.44, 12.59)]
    [InlineData(600, 16.59, 16.79)]
    public void WearAndPressure_FourSprings_MatchTable(double newtons, double wear, double pressure)
    {
        var clamp = Force.FromNewtons(newtons);

        Printed.Matches(wear, 2, ClutchTorque.UniformWear(2, 0.35, clamp, Mm(32), Mm(47)).NewtonMeters);
        Printed.Matches(pressure, 2, ClutchTorque.UniformPressure(2, 0.35, clamp, Mm(32), Mm(47)).NewtonMeters);
    }

    // Source: public exercise in machine elements: two faces, 1 MPa, 140/200 mm diameters, mu 0.5, uniform wear.
    [Fact]
    public void UniformWear_TextbookExercise_MatchesItsAnswer()
    {
        var clamp = ClutchTorque.ClampAtPressureLimit(Pressure.FromMegapascals(1), Mm(70), Mm(100));

        Printed.Matches(13195, 0, clamp.Newtons);
        Printed.Matches(1121.5, 1, ClutchTorque.UniformWear(2, 0.5, clamp, Mm(70), Mm(100)).NewtonMeters);
    }

    // Source: integrating mu p 2 pi r^2 dr over the ring with p constant, by the midpoint rule; independent of the closed form.
    [Fact]
    public void UniformPressure_AgainstNumericalIntegration_Agrees()
    {
        const double mu = 0.35, force = 450, ri = 0.032, ro = 0.047;
        const int slices = 20000;
        var pressure = force / (Math.PI * ((ro * ro) - (ri * ri)));
        var dr = (ro - ri) / slices;
        var torque = Enumerable.Range(0, slices)
            .Select(i => ri + ((i + 0.5) * dr))
            .Sum(r => 2 * mu * pressure * 2 * Math.PI * r * r * dr);

        Assert.Equal(torque, ClutchTorque.UniformPressure(2, mu, Force.FromNewtons(force), Mm(32), Mm(47)).NewtonMeters, 7);
    }

    // Law, same texts: wear carries less than pressure, both lie between all the force at the inner and at the outer edge.
    [Fact]
    public void UniformWear_AnyRing_CarriesLessThanUniformPressure() =>
        Gen.Select(Gen.Int[1, 8], Gen.Double[0.05, 0.6], Gen.Double[10, 2000], Gen.Double[5, 80], Gen.Double[0.5, 60])
            .Sample((faces, mu, newtons, inner, breadth) =>
            {
                var (clamp, ri, ro) = (Force.FromNewtons(newtons), Mm(inner), Mm(inner + breadth));
                var wear = ClutchTorque.UniformWear(faces, mu, clamp, ri, ro);
                var pressure = ClutchTorque.UniformPressure(faces, mu, clamp, ri, ro);
                return ClutchTorque.DiscretePads(faces, mu, clamp, ri) < wear
                    && wear < pressure
                    && pressure < ClutchTorque.DiscretePads(faces, mu, clamp, ro);
            });

    [Fact]
    public void UniformWear_InnerNotBelowOuter_SaysSo() =>
        Refusal.Says(
            "innerRadius", "Must be less than the outer radius (47 mm); was 47 mm.",
            () => ClutchTorque.UniformWear(2, 0.35, Force.FromNewtons(450), Mm(47), Mm(47)));

    [Theory]
    [InlineData(0)]
    [InlineData(1.01)]
    public void DiscretePads_FrictionOutsideRange_Refuses(double mu) =>
        Refusal.Says(
            "friction", "Must be more than 0 and at most 1; was",
            () => ClutchTorque.DiscretePads(2, mu, Force.FromNewtons(450), Mm(40)));

    [Theory]
    [InlineData(0)]
    [InlineData(21)]
    public void DiscretePads_FacesOutsideRange_Refuses(int faces) =>
        Refusal.Says(
            "faces", $"Must be between 1 and 20; was {faces}.",
            () => ClutchTorque.DiscretePads(faces, 0.35, Force.FromNewtons(450), Mm(40)));
}
