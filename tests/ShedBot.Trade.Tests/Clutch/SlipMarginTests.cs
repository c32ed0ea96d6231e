using CsCheck;
using ShedBot.Trade.Clutch;
using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Tests.Clutch;

public class SlipMarginTests
{
    private static readonly Length PadCircle = Length.FromMillimeters(40);

    private static readonly Torque Demand = SlipMargin.Demand(Torque.FromNewtonMeters(3), 4.1);

    // Source: kinematics, 3 N m behind a 4.1 reduction.
    [Fact]
    public void Demand_ThreeNewtonMetres_Is12Point3() => Printed.Matches(12.3, 1, Demand.NewtonMeters);

    // Source: F = margin x T / (N mu r) by hand. Friction ends: Juvinall and Marshek, table of friction materials, p. 750.
    [Theory]
    [InlineData(0.25, 615, 800)]
    [InlineData(0.35, 439, 571)]
    [InlineData(0.45, 342, 444)]
    public void ClampNeeded_DryPads_MatchesTable(double mu, double bare, double withMargin)
    {
        Printed.Matches(bare, 0, SlipMargin.ClampNeeded(Demand, 1, 2, mu, PadCircle).Newtons);
        Printed.Matches(withMargin, 0, SlipMargin.ClampNeeded(Demand, SlipMargin.LeastWarm, 2, mu, PadCircle).Newtons);
    }

    // Source: as above; no kit spring comes near it, so oily pads are cleaned, not tightened.
    [Fact]
    public void ClampNeeded_OilyPads_Is2196() =>
        Printed.Matches(2196, 0, SlipMargin.ClampNeeded(Demand, 1, 2, 0.07, PadCircle).Newtons);

    // Source: the 450 N row of the uniform-wear table over the demand.
    [Fact]
    public void Of_450NewtonSpring_IsJustAboveOneAndFailsTheWarmRule()
    {
        var margin = SlipMargin.Of(
            ClutchTorque.UniformWear(
                2, 0.35, Force.FromNewtons(450), Length.FromMillimeters(32), Length.FromMillimeters(47)),
            Demand);

        Printed.Matches(1.01, 2, margin);
        Assert.True(margin < SlipMargin.LeastWarm);
    }

    // Source: Juvinall and Marshek, table of friction materials, p. 750.
    [Fact]
    public void PadFriction_PublishedRanges_OilLeavesAFifthToAQuarter()
    {
        Assert.Equal((0.25, 0.45), (PadFriction.DryMoulded.Low, PadFriction.DryMoulded.High));
        Assert.Equal((0.06, 0.09), (PadFriction.Oily.Low, PadFriction.Oily.High));
        Assert.Equal(0.24, PadFriction.Oily.Low / PadFriction.DryMoulded.Low, 9);
        Assert.Equal(0.20, PadFriction.Oily.High / PadFriction.DryMoulded.High, 9);
    }

    [Fact]
    public void Of_NoDemand_Refuses() =>
        Refusal.Says("demand", "Must be more than 0; was 0 N·m.", () => SlipMargin.Of(Demand, Torque.Zero));

    // Law: the clamp asked for gives back exactly the margin asked for.
    [Fact]
    public void ClampNeeded_PutBackIntoTheMargin_GivesTheMargin() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[0.5, 5], Gen.Int[1, 8], Gen.Double[0.05, 0.6], Gen.Double[10, 90])
            .Sample((newtonMetres, margin, faces, mu, radius) =>
            {
                var (demand, r) = (Torque.FromNewtonMeters(newtonMetres), Length.FromMillimeters(radius));
                var clamp = SlipMargin.ClampNeeded(demand, margin, faces, mu, r);
                return Math.Abs(SlipMargin.Of(ClutchTorque.DiscretePads(faces, mu, clamp, r), demand) - margin) < 1e-9;
            });

    // Source: 2 x 0.35 x 450 x 0.0395 / 12.3 by hand; a pad circle half-way across the ring equals uniform wear.
    [Fact]
    public void Margin_ForTheRider_CarriesEveryInputAndHowToMeasureIt()
    {
        var figure = ClutchFigures.Margin(
            2, 0.35, Force.FromNewtons(450), Length.FromMillimeters(39.5), Torque.FromNewtonMeters(3), 4.1);

        Printed.Matches(1.01, 2, figure.Value.Amount);
        Assert.Equal(SourceMark.Published, figure.Mark);
        Assert.Equal(["2", "0.35", "450 N", "39.5 mm", "3.0 N m", "4.1"], figure.Inputs.Select(input => input.Given));
        Assert.All(figure.Inputs, input => Assert.NotEmpty(input.MeasureYours));
        Assert.Equal(
            "Damp white cloth on a pad, never blow or brush the dust: dry 0.25 to 0.45, oily 0.06 to 0.09.",
            figure.Inputs[1].MeasureYours);
    }
}
