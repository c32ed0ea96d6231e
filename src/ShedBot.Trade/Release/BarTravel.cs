namespace ShedBot.Trade.Release;

/// <summary>What one pull of the lever does to the bucking bar, counted from where the arm rests.</summary>
/// <param name="PreLift">Lift already spent at rest: 0 with the arm at neutral. The bar then rubs all the time.</param>
/// <param name="Left">Further lift that the pull adds; the release has to live on this.</param>
/// <param name="Swing">Angle the arm really turns on the pull.</param>
/// <param name="SwingCutShort">The arm met its limit before the pull was used up.</param>
public sealed record BarTravel(Length PreLift, Length Left, Angle Swing, bool SwingCutShort)
{
    /// <summary>Travel of one pull: swing = min(pull, limit - start), left = lift(start + swing) - lift(start).</summary>
    /// <param name="cam">The cam as measured.</param>
    /// <param name="start">Where the arm rests, from neutral, 0 to 90 degrees.</param>
    /// <param name="pullSwing">Angle the cable would turn the arm, 0 to 180 degrees; see <see cref="ArmSwing"/>.</param>
    /// <param name="limit">
    /// Where the arm meets the case or the wire pulls past square, from neutral; from start to 90 degrees. About 30 degrees [from memory]:
    /// watch your own.
    /// </param>
    /// <remarks>
    /// Source: plane geometry [derived]. With a little start angle nothing is lost, because the flat lifts faster further round; the loss
    /// begins when the limit cuts the swing short.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An angle outside its range.</exception>
    public static BarTravel OnPull(HalfRoundCam cam, Angle start, Angle pullSwing, Angle limit)
    {
        Limits.Between(start, Angle.Zero, Angle.FromDegrees(90));
        Limits.Between(pullSwing, Angle.Zero, Angle.FromDegrees(180));
        Limits.Between(limit, start, Angle.FromDegrees(90));
        var room = limit - start;
        var swing = pullSwing < room ? pullSwing : room;
        var before = cam.Lift(start);
        // Rounding may carry start + swing a hair past the limit.
        var end = pullSwing < room ? start + swing : limit;
        return new BarTravel(before, cam.Lift(end) - before, swing, pullSwing > room);
    }

    /// <summary>Gap that opens at each of the two friction faces: (left - lost motion) / 2, never below 0.</summary>
    /// <param name="lostMotion">Lift eaten by a loose cover, a bent arm or play in the parts, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    public Length GapPerFace(Length lostMotion)
    {
        var left = Left - Limits.ZeroOrMore(lostMotion);
        return left > Length.Zero ? left / 2 : Length.Zero;
    }
}
