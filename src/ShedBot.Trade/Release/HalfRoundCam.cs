namespace ShedBot.Trade.Release;

/// <summary>The arm's lower shaft, cut away to a flat that pushes the bucking bar when the arm turns.</summary>
/// <remarks>
/// Source: plane geometry [derived]; it takes a flat-ended bar square to the cam and centred on its axis. A domed or mushroomed tip acts
/// like a bar of smaller contact half-width, which is why a worn bar drags while the arm moves as it should.
/// </remarks>
public sealed record HalfRoundCam
{
    /// <param name="radius">Shaft radius r, more than 0.</param>
    /// <param name="flatOffset">Distance h from the shaft's axis to the flat, 0 or more and less than r; 0 is an exact half-round.</param>
    /// <param name="contactHalfWidth">Half the width b of the bar face that bears on the flat, more than 0 and at most r.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length outside its range.</exception>
    public HalfRoundCam(Length radius, Length flatOffset, Length contactHalfWidth)
    {
        Limits.MoreThanZero(radius);
        Limits.ZeroOrMore(flatOffset);
        Limits.Below(flatOffset, radius, "the radius");
        Limits.MoreThanZero(contactHalfWidth);
        Limits.AtMost(contactHalfWidth, radius, "the radius");
        (Radius, FlatOffset, ContactHalfWidth) = (radius, flatOffset, contactHalfWidth);
    }

    public Length Radius { get; }

    public Length FlatOffset { get; }

    public Length ContactHalfWidth { get; }

    /// <summary>Most the cam can ever lift: r - h, with the round of the shaft against the bar.</summary>
    public Length MaxLift => Radius - FlatOffset;

    /// <summary>
    /// Angle at which the flat's edge comes under the bar: where b = w cos t - h sin t, that is acos(b / r) - atan(h / w).
    /// 0 when the bar is wider than the flat from the start.
    /// </summary>
    public Angle CornerAngle =>
        Angle.FromRadians(Math.Max(0, Math.Acos(ContactHalfWidth / Radius) - Math.Atan2(FlatOffset.Meters, HalfFlat)));

    private double HalfFlat => Math.Sqrt((Radius.Meters * Radius.Meters) - (FlatOffset.Meters * FlatOffset.Meters));

    /// <summary>Lift of the bar with the arm turned by an angle from neutral.</summary>
    /// <param name="turned">Angle t from neutral (flat square on the bar), 0 to 90 degrees; either way round gives the same lift.</param>
    /// <returns>
    /// On the flat h (1/cos t - 1) + b tan t; past the corner h cos t + w sin t - h; then r - h; with w = sqrt(r^2 - h^2).
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An angle outside 0 to 90 degrees.</exception>
    public Length Lift(Angle turned)
    {
        var t = Limits.Between(turned, Angle.Zero, Angle.FromDegrees(90)).Radians;
        var (h, b, w) = (FlatOffset.Meters, ContactHalfWidth.Meters, HalfFlat);
        if (b <= (w * Math.Cos(t)) - (h * Math.Sin(t)))
            return Length.FromMeters((h * ((1 / Math.Cos(t)) - 1)) + (b * Math.Tan(t)));

        // Past acos(h / r) the edge has gone over the top and the bar rides on the round of the shaft.
        return t >= Math.Acos(FlatOffset / Radius)
            ? MaxLift
            : Length.FromMeters((h * Math.Cos(t)) + (w * Math.Sin(t)) - h);
    }
}
