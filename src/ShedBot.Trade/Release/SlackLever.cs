namespace ShedBot.Trade.Release;

/// <summary>
/// The lever between bar and cable: near neutral the cable moves R / b times as far as the bar, about ten times on usual sizes, so a
/// little wear is a lot of slack.
/// </summary>
/// <remarks>
/// Source: first-order geometry at neutral [derived]. For changes beyond about a quarter of the cam's greatest lift read the answer as
/// "beyond any adjuster", not as a length: the cam cannot turn that far.
/// </remarks>
public sealed record SlackLever
{
    /// <param name="armRadius">Distance R from the arm's axis to the cable hole, more than 0.</param>
    /// <param name="contactHalfWidth">Half the width b of the bar face on the cam, more than 0 and less than R.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length outside its range.</exception>
    public SlackLever(Length armRadius, Length contactHalfWidth)
    {
        Limits.MoreThanZero(armRadius);
        Limits.MoreThanZero(contactHalfWidth);
        Limits.Below(contactHalfWidth, armRadius, "the arm radius");
        (ArmRadius, ContactHalfWidth) = (armRadius, contactHalfWidth);
    }

    public Length ArmRadius { get; }

    public Length ContactHalfWidth { get; }

    /// <summary>Cable length per length of bar, R / b.</summary>
    public double Ratio => ArmRadius / ContactHalfWidth;

    /// <summary>
    /// Cable slack for a change along the bar's line: x R / b. Serves total wear of bar, ball and cam (slack grows), one notch of the nut
    /// (in grows, out shrinks), a lost ball (its whole diameter) and a longer bar (slack shrinks).
    /// </summary>
    /// <param name="alongBar">Change along the bar, 0 or more; the caller knows which way it works.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    public Length CableFor(Length alongBar) => Ratio * Limits.ZeroOrMore(alongBar);

    /// <summary>Bar lift eaten by lost cable (loose cover, squashed casing) or hidden by a barrel adjuster: cable / (R / b).</summary>
    /// <param name="cable">Cable length, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    public Length LiftFor(Length cable) => Limits.ZeroOrMore(cable) / Ratio;
}
