namespace ShedBot.Trade.Engine;

/// <summary>Crankshaft torque out of a claimed power.</summary>
public static class EngineTorque
{
    /// <summary>T = P / (2 pi n); in workshop units 9549 x kW / rpm.</summary>
    /// <param name="power">Power at that speed, 0 or more. Kit claims are often too high, so the torque comes out too high with them.</param>
    /// <param name="engineSpeed">Crankshaft speed at which the power is claimed, more than 0.</param>
    /// <remarks>Source: definition of power [published].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative power, or a speed of 0 or less.</exception>
    public static Torque FromPower(Power power, RotationalSpeed engineSpeed) =>
        Torque.FromNewtonMeters(
            (double)Limits.ZeroOrMore(power).Watts / Limits.MoreThanZero(engineSpeed).RadiansPerSecond);
}
