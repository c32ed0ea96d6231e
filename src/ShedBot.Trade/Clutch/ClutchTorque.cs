namespace ShedBot.Trade.Clutch;

/// <summary>Torque that a plate clutch carries before it slips.</summary>
/// <remarks>
/// Source: clutch chapters of Shigley, Mechanical Engineering Design, and of Juvinall and Marshek, Fundamentals of Machine Component
/// Design [published]. A bedded-in clutch follows uniform wear, a new rigid one uniform pressure; uniform wear is the lower and safer.
/// The friction value is dimensionless, more than 0 and at most 1: see <see cref="PadFriction"/>.
/// </remarks>
public static class ClutchTorque
{
    private const int MostFaces = 20;

    /// <summary>Uniform wear: T = N x mu x F x (ro + ri) / 2.</summary>
    /// <param name="faces">Working friction faces N, 1 to 20; a single plate pressed from both sides has two.</param>
    /// <param name="friction">Friction value mu, more than 0 and at most 1.</param>
    /// <param name="clamp">Clamp force F, 0 or more; weigh the spring with a push scale at the plate.</param>
    /// <param name="innerRadius">Inner radius ri of the friction ring, more than 0.</param>
    /// <param name="outerRadius">Outer radius ro, more than ri.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Torque UniformWear(int faces, double friction, Force clamp, Length innerRadius, Length outerRadius)
    {
        RequireRing(innerRadius, outerRadius);
        return Carried(faces, friction, clamp, (innerRadius + outerRadius) / 2);
    }

    /// <summary>Uniform pressure: T = N x mu x F x (2/3) x (ro^3 - ri^3) / (ro^2 - ri^2).</summary>
    /// <inheritdoc cref="UniformWear" path="/param"/>
    /// <inheritdoc cref="UniformWear" path="/exception"/>
    public static Torque UniformPressure(int faces, double friction, Force clamp, Length innerRadius, Length outerRadius)
    {
        RequireRing(innerRadius, outerRadius);
        var (ri, ro) = (innerRadius.Meters, outerRadius.Meters);
        // (ro^3 - ri^3) / (ro^2 - ri^2) with ro - ri divided out, so that a narrow ring loses no digits.
        var radius = 2.0 / 3 * ((ro * ro) + (ro * ri) + (ri * ri)) / (ro + ri);
        return Carried(faces, friction, clamp, Length.FromMeters(radius));
    }

    /// <summary>Separate pads on a ring: T = N x mu x F x r, with every pad taken at its centre.</summary>
    /// <param name="padCircleRadius">Radius r of the circle through the pad centres, more than 0.</param>
    /// <inheritdoc cref="UniformWear" path="/param"/>
    /// <inheritdoc cref="UniformWear" path="/exception"/>
    public static Torque DiscretePads(int faces, double friction, Force clamp, Length padCircleRadius) =>
        Carried(faces, friction, clamp, padCircleRadius);

    /// <summary>Clamp force that reaches a pressure limit at the inner edge, uniform wear: F = 2 pi x p x ri x (ro - ri).</summary>
    /// <param name="pressureLimit">Highest pressure p the lining bears, more than 0.</param>
    /// <param name="innerRadius">Inner radius ri, more than 0.</param>
    /// <param name="outerRadius">Outer radius ro, more than ri.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Force ClampAtPressureLimit(Pressure pressureLimit, Length innerRadius, Length outerRadius)
    {
        RequireRing(innerRadius, outerRadius);
        return Force.FromNewtons(
            2 * Math.PI * Limits.MoreThanZero(pressureLimit).Pascals
            * innerRadius.Meters * (outerRadius - innerRadius).Meters);
    }

    private static Torque Carried(int faces, double friction, Force clamp, Length padCircleRadius) =>
        Limits.Between(faces, 1, MostFaces) * Limits.MoreThanZeroUpTo(friction, 1)
        * (Limits.ZeroOrMore(clamp) * Limits.MoreThanZero(padCircleRadius));

    private static void RequireRing(Length innerRadius, Length outerRadius)
    {
        Limits.MoreThanZero(innerRadius);
        Limits.MoreThanZero(outerRadius);
        Limits.Below(innerRadius, outerRadius, "the outer radius");
    }
}
