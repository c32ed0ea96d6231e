namespace ShedBot.Trade.Bearings;

/// <summary>The boundary dimensions by which a ball bearing is bought.</summary>
/// <param name="Designation">The basic number on the ring, without suffixes.</param>
/// <param name="Bore">Inside diameter d.</param>
/// <param name="OuterDiameter">Outside diameter D.</param>
/// <param name="Width">Width B.</param>
/// <remarks>
/// Suffixes: ZZ metal shields, 2RS contact seals, none open; dust and wet call for contact seals on the clutch shaft, while crank mains
/// run open so that the fuel mist reaches them [common practice].
/// </remarks>
public sealed record BallBearing(string Designation, Length Bore, Length OuterDiameter, Length Width)
{
    /// <summary>6202: 15 x 35 x 11 mm. Source: ISO 15, dimension series 02 [published]. Read the number on your own bearing first.</summary>
    public static BallBearing Size6202 { get; } =
        new("6202", Length.FromMillimeters(15), Length.FromMillimeters(35), Length.FromMillimeters(11));

    /// <summary>Does a worn part measure as this size? Compares all three dimensions.</summary>
    /// <param name="bore">Measured inside diameter.</param>
    /// <param name="outerDiameter">Measured outside diameter.</param>
    /// <param name="width">Measured width.</param>
    /// <param name="tolerance">Largest difference to accept on each, more than 0; 0.2 mm suits a vernier in a beginner's hands [common practice].</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is 0 or less.</exception>
    public bool Matches(Length bore, Length outerDiameter, Length width, Length tolerance) =>
        Near(bore, Bore, tolerance) && Near(outerDiameter, OuterDiameter, tolerance) && Near(width, Width, tolerance);

    private static bool Near(Length measured, Length nominal, Length tolerance) =>
        Math.Abs((measured - nominal).Millimeters) <= Limits.MoreThanZero(tolerance).Millimeters;
}
