namespace ShedBot.Trade.Release;

/// <summary>How far the clutch arm turns for a length of cable.</summary>
/// <remarks>Source: plane geometry [derived]. The two forms differ by under 1 % up to 25 degrees.</remarks>
public static class ArmSwing
{
    /// <summary>Wire that stays square to the arm: theta = p / R.</summary>
    /// <param name="usablePull">Cable taken in at the arm p, 0 or more and at most half a turn of the arm, pi x R.</param>
    /// <param name="armRadius">Distance R from the arm's axis to the cable hole, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Angle Tangential(Length usablePull, Length armRadius)
    {
        Require(usablePull, armRadius);
        return Angle.FromRadians(Limits.AtMost(usablePull, Math.PI * armRadius, "half a turn of the arm") / armRadius);
    }

    /// <summary>Cable hole moved by a straight chord p: theta = 2 asin(p / 2R).</summary>
    /// <param name="usablePull">Straight distance p the hole moves, 0 or more and at most 2R.</param>
    /// <param name="armRadius">Distance R from the arm's axis to the cable hole, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Angle Chord(Length usablePull, Length armRadius)
    {
        Require(usablePull, armRadius);
        var reach = 2 * armRadius;
        return Angle.FromRadians(2 * Math.Asin(Limits.AtMost(usablePull, reach, "the arm's whole reach") / reach));
    }

    private static void Require(Length usablePull, Length armRadius)
    {
        Limits.ZeroOrMore(usablePull);
        Limits.MoreThanZero(armRadius);
    }
}
