namespace ShedBot.Trade.Engine;

/// <summary>Swept volume, compression and piston speed of one cylinder, from the rider's own bore and stroke.</summary>
/// <remarks>Source: definitions, any engine textbook [published]. Kit sizes are sold under loose names: measure, do not assume.</remarks>
public static class Cylinder
{
    /// <summary>Swept volume V = pi/4 x B^2 x S.</summary>
    /// <param name="bore">Cylinder bore B, more than 0.</param>
    /// <param name="stroke">Full piston travel S, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either length is 0 or less.</exception>
    public static Volume Displacement(Length bore, Length stroke)
    {
        var b = Limits.MoreThanZero(bore).Meters;
        return Volume.FromCubicMeters(Math.PI / 4 * b * b * Limits.MoreThanZero(stroke).Meters);
    }

    /// <summary>Full-stroke compression ratio (V + Vc) / Vc. Two-strokes also quote a lower, trapped ratio: say which one is meant.</summary>
    /// <param name="swept">Swept volume V, more than 0.</param>
    /// <param name="clearance">Volume Vc left at top dead centre: head, gasket and crown gap together; more than 0.</param>
    /// <returns>A ratio above 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Either volume is 0 or less.</exception>
    public static double CompressionRatio(Volume swept, Volume clearance) =>
        1 + (Limits.MoreThanZero(swept) / Limits.MoreThanZero(clearance));

    /// <summary>Mean piston speed 2 x S x n: two strokes a turn.</summary>
    /// <param name="stroke">Full piston travel S, more than 0.</param>
    /// <param name="engineSpeed">Crankshaft speed n, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Stroke 0 or less, or a negative speed.</exception>
    public static Speed MeanPistonSpeed(Length stroke, RotationalSpeed engineSpeed) =>
        Speed.FromMetersPerSecond(
            2 * Limits.MoreThanZero(stroke).Meters * Limits.ZeroOrMore(engineSpeed).RevolutionsPerSecond);
}
