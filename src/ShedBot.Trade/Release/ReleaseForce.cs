namespace ShedBot.Trade.Release;

/// <summary>Forces from the clutch spring back to the rider's hand.</summary>
/// <remarks>
/// Source: levers with friction [derived], at the start of the lift; the pull grows with 1 / cos^2 of the arm's turn, 15 % at 21 degrees.
/// The spring force is not published: weigh it with a push scale.
/// </remarks>
public static class ReleaseForce
{
    /// <summary>Cable pull at the arm: F x b / (R x efficiency).</summary>
    /// <param name="spring">Clutch spring force F, 0 or more.</param>
    /// <param name="lever">Arm radius and contact half-width.</param>
    /// <param name="camEfficiency">Share not lost to rubbing at the cam, more than 0 and at most 1; 0.6 to 0.8 [from memory].</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Force AtArm(Force spring, SlackLever lever, double camEfficiency) =>
        Limits.ZeroOrMore(spring) / (lever.Ratio * Limits.MoreThanZeroUpTo(camEfficiency, 1));

    /// <summary>Force of the fingers for a cable pull at the lever: P x a / g.</summary>
    /// <param name="cablePull">Cable pull P at the lever, 0 or more; the pull at the arm divided by what the casing lets through.</param>
    /// <param name="cableArm">Distance a from lever pivot to cable nipple, more than 0.</param>
    /// <param name="gripLength">Distance g from pivot to finger point, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Force AtHand(Force cablePull, Length cableArm, Length gripLength) =>
        Limits.ZeroOrMore(cablePull) * (Limits.MoreThanZero(cableArm) / Limits.MoreThanZero(gripLength));
}
