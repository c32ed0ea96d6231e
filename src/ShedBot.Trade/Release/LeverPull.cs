namespace ShedBot.Trade.Release;

/// <summary>How much cable the hand lever pulls, and how much of it is left to turn the clutch arm.</summary>
/// <remarks>Source: lever geometry for small angles [derived]. Levers differ: measure the pull at the wire, 10 to 18 mm is usual [from memory].</remarks>
public static class LeverPull
{
    /// <summary>p = a x s / g.</summary>
    /// <param name="cableArm">Distance a from lever pivot to cable nipple, more than 0.</param>
    /// <param name="gripTravel">Travel s of the finger point, 0 or more.</param>
    /// <param name="gripLength">Distance g from pivot to finger point, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Length CablePull(Length cableArm, Length gripTravel, Length gripLength) =>
        Limits.MoreThanZero(cableArm) * (Limits.ZeroOrMore(gripTravel) / Limits.MoreThanZero(gripLength));

    /// <summary>Pull left for the arm = pull - slack - casing give, never below 0.</summary>
    /// <param name="cablePull">Whole pull at the lever, 0 or more.</param>
    /// <param name="slack">Free play in the wire, 0 or more.</param>
    /// <param name="casingGive">How far casing and stops squash, 0 or more; 1 to 2 mm is usual [from memory].</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    public static Length Usable(Length cablePull, Length slack, Length casingGive)
    {
        var left = Limits.ZeroOrMore(cablePull) - Limits.ZeroOrMore(slack) - Limits.ZeroOrMore(casingGive);
        return left > Length.Zero ? left : Length.Zero;
    }
}
