using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Clutch;

/// <summary>Clutch results ready to show a rider, with their inputs and how to measure each.</summary>
public static class ClutchFigures
{
    /// <summary>Slip margin of a clutch with separate pads: <see cref="ClutchTorque.DiscretePads"/> over <see cref="SlipMargin.Demand"/>.</summary>
    /// <param name="faces">Working friction faces N, 1 to 20.</param>
    /// <param name="friction">Friction value mu, more than 0 and at most 1.</param>
    /// <param name="clamp">Clamp force F, 0 or more.</param>
    /// <param name="padCircleRadius">Radius r of the circle through the pad centres, more than 0.</param>
    /// <param name="engineTorque">Crankshaft torque, more than 0.</param>
    /// <param name="primary">Primary reduction, more than 0 and at most 100.</param>
    /// <returns>A dimensionless margin; see <see cref="SlipMargin.Of"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static TradeFigure<Scalar> Margin(
        int faces, double friction, Force clamp, Length padCircleRadius, Torque engineTorque, double primary) =>
        new(
            Scalar.FromAmount(SlipMargin.Of(
                ClutchTorque.DiscretePads(faces, friction, clamp, padCircleRadius),
                SlipMargin.Demand(engineTorque, primary))),
            "N x mu x F x r / (engine torque x primary)",
            "Shigley and Juvinall and Marshek, clutch chapters",
            SourceMark.Published,
            [
                new("Faces N", Shown.Plain(faces), "Count the sides of the pads that rub: both sides of one gear make two."),
                new(
                    "Friction mu", Shown.Plain(friction),
                    "Damp white cloth on a pad, never blow or brush the dust: "
                    + $"dry {Range(PadFriction.DryMoulded)}, oily {Range(PadFriction.Oily)}."),
                new("Clamp force F", Shown.Newtons(clamp), "Engine off and cold: push scale on the plate until it just moves."),
                new("Pad radius r", Shown.Millimetres(padCircleRadius), "Ruler from the shaft's middle to the middle of a pad."),
                new("Engine torque", Shown.NewtonMetres(engineTorque), "Seller's figure, often too high; take it as the worst case."),
                new("Primary ratio", Shown.Plain(primary), "Count the teeth of both gears."),
            ]);

    private static string Range(PadFriction friction) => $"{Shown.Plain(friction.Low)} to {Shown.Plain(friction.High)}";
}
