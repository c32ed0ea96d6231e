namespace ShedBot.Trade.Gearing;

/// <summary>Road speed, engine speed and wheel torque tied together by the overall ratio, with no slip anywhere.</summary>
/// <remarks>Source: kinematics [published].</remarks>
public static class RoadSpeed
{
    private const double MostOverall = 1000;

    /// <summary>v = n x C / i.</summary>
    /// <param name="engineSpeed">Crankshaft speed n, 0 or more.</param>
    /// <param name="overall">Overall ratio i, more than 0 and at most 1000.</param>
    /// <param name="circumference">Rolling circumference C, more than 0; best by a roll-out with the rider aboard.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Speed At(RotationalSpeed engineSpeed, double overall, Length circumference) =>
        Speed.FromMetersPerSecond(
            Limits.ZeroOrMore(engineSpeed).RevolutionsPerSecond * Limits.MoreThanZero(circumference).Meters
            / Limits.MoreThanZeroUpTo(overall, MostOverall));

    /// <summary>n = v x i / C, the inverse of <see cref="At"/>. A higher reading on the engine than this is a slipping clutch.</summary>
    /// <param name="roadSpeed">Road speed v, 0 or more.</param>
    /// <param name="overall">Overall ratio i, more than 0 and at most 1000.</param>
    /// <param name="circumference">Rolling circumference C, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static RotationalSpeed EngineSpeedAt(Speed roadSpeed, double overall, Length circumference) =>
        RotationalSpeed.FromRevolutionsPerSecond(
            Limits.ZeroOrMore(roadSpeed).MetersPerSecond * Limits.MoreThanZeroUpTo(overall, MostOverall)
            / Limits.MoreThanZero(circumference).Meters);

    /// <summary>Torque at the rear wheel = engine torque x i x efficiency.</summary>
    /// <param name="engineTorque">Crankshaft torque, 0 or more.</param>
    /// <param name="overall">Overall ratio i, more than 0 and at most 1000.</param>
    /// <param name="efficiency">Share that reaches the wheel, more than 0 and at most 1; about 0.9 [from memory].</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Torque WheelTorque(Torque engineTorque, double overall, double efficiency) =>
        Limits.ZeroOrMore(engineTorque)
        * Limits.MoreThanZeroUpTo(overall, MostOverall) * Limits.MoreThanZeroUpTo(efficiency, 1);
}
