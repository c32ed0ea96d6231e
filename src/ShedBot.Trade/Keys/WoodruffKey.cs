namespace ShedBot.Trade.Keys;

/// <summary>A Woodruff (half-moon) key: its size as bought and how deep it sits in the shaft.</summary>
/// <param name="Width">Width b.</param>
/// <param name="Height">Height h.</param>
/// <param name="CutterDiameter">Diameter of the disc it is cut from.</param>
/// <param name="Length">Length l along the flat top.</param>
/// <param name="ShaftDepth">Depth t1 of the slot in the shaft, series A (deep hub slot).</param>
/// <remarks>
/// Source: DIN 6888 (August 1956), dimensions table [published, read through a poor scan]. Kits come with at least three key and slot
/// combinations: measure width, height and slot depth before buying.
/// </remarks>
public sealed record WoodruffKey(Length Width, Length Height, Length CutterDiameter, Length Length, Length ShaftDepth)
{
    /// <summary>The 3 and 4 mm keys of the standard, smallest first.</summary>
    public static IReadOnlyList<WoodruffKey> Standard { get; } =
    [
        Millimetres(3, 3.7, 10, 9.66, 2.5),
        Millimetres(3, 5, 13, 12.65, 3.8),
        Millimetres(3, 6.5, 16, 15.72, 5.3),
        Millimetres(4, 5, 13, 12.65, 3.5),
        Millimetres(4, 6.5, 16, 15.72, 5.0),
        Millimetres(4, 7.5, 19, 18.57, 6.0),
    ];

    /// <summary>Area in shear, b x l. The chord at the shaft's surface is 4 to 11 % shorter than l, so this flatters the key a little.</summary>
    public Area ShearArea => Width * Length;

    /// <summary>Area pressed by the hub, (h - t1) x l.</summary>
    public Area BearingArea => (Height - ShaftDepth) * Length;

    /// <summary>The standard key nearest to what a rider measured.</summary>
    /// <param name="width">Measured width, more than 0.</param>
    /// <param name="height">Measured height, more than 0.</param>
    /// <param name="tolerance">Largest difference to accept on each, more than 0.</param>
    /// <returns>The key, or null when none is that near: then the slot is not to this standard and wants a second look.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length of 0 or less.</exception>
    public static WoodruffKey? Find(Length width, Length height, Length tolerance)
    {
        Limits.MoreThanZero(width);
        Limits.MoreThanZero(height);
        Limits.MoreThanZero(tolerance);
        return Standard
            .Where(key => Off(key.Width, width) <= tolerance.Millimeters && Off(key.Height, height) <= tolerance.Millimeters)
            .MinBy(key => Off(key.Width, width) + Off(key.Height, height));
    }

    private static double Off(Length nominal, Length measured) => Math.Abs((nominal - measured).Millimeters);

    private static WoodruffKey Millimetres(double b, double h, double cutter, double l, double t1) =>
        new(
            UnitsNet.Length.FromMillimeters(b), UnitsNet.Length.FromMillimeters(h), UnitsNet.Length.FromMillimeters(cutter),
            UnitsNet.Length.FromMillimeters(l), UnitsNet.Length.FromMillimeters(t1));
}
