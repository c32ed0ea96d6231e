namespace ShedBot.Trade.Casing;

/// <summary>How much of the lever's pull survives the bends of the cable casing.</summary>
/// <remarks>
/// T_out = T_in x e^(-mu x theta), Euler's capstan equation [published]. Theta is the sum of ALL bends, whichever way they turn; a
/// gentle bend costs as much as a tight one of the same angle. Friction values are in <see cref="CasingFriction"/>.
/// </remarks>
public static class Capstan
{
    /// <summary>Share of the pull that arrives, 1 for a straight or frictionless casing.</summary>
    /// <param name="friction">Friction value mu, dimensionless, 0 to 1.</param>
    /// <param name="bends">Sum of all bend angles theta, 0 to 3600 degrees.</param>
    /// <returns>More than 0 and at most 1. About one half is a job for re-routing, not for an adjuster.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static double ShareThrough(double friction, Angle bends) =>
        Math.Exp(
            -Limits.Between(friction, 0, 1)
            * Limits.Between(bends, Angle.Zero, Angle.FromDegrees(3600)).Radians);

    /// <summary>Pull at the arm for a pull at the lever.</summary>
    /// <param name="pullAtLever">Cable tension at the lever, 0 or more.</param>
    /// <inheritdoc cref="ShareThrough" path="/param"/>
    /// <inheritdoc cref="ShareThrough" path="/exception"/>
    public static Force PullAtArm(Force pullAtLever, double friction, Angle bends) =>
        Limits.ZeroOrMore(pullAtLever) * ShareThrough(friction, bends);

    /// <summary>Pull the lever must give for a pull wanted at the arm.</summary>
    /// <param name="pullAtArm">Cable tension at the arm, 0 or more.</param>
    /// <inheritdoc cref="ShareThrough" path="/param"/>
    /// <inheritdoc cref="ShareThrough" path="/exception"/>
    public static Force PullAtLever(Force pullAtArm, double friction, Angle bends) =>
        Limits.ZeroOrMore(pullAtArm) / ShareThrough(friction, bends);
}
