namespace ShedBot.Trade.Clutch;

/// <summary>Published range of the friction value of moulded pads; dimensionless. Which end a kit's pads sit at is not published.</summary>
/// <remarks>
/// Source: Juvinall and Marshek, Fundamentals of Machine Component Design, table of friction materials, p. 750 [published].
/// The same table says to design with 50 to 75 % of a test value.
/// </remarks>
public sealed record PadFriction
{
    /// <summary>Dry moulded pads on metal: 0.25 to 0.45.</summary>
    public static PadFriction DryMoulded { get; } = new(0.25, 0.45);

    /// <summary>The same pads with oil between: 0.06 to 0.09, a quarter to a fifth of the dry value.</summary>
    public static PadFriction Oily { get; } = new(0.06, 0.09);

    private PadFriction(double low, double high) => (Low, High) = (low, high);

    public double Low { get; }

    public double High { get; }
}
