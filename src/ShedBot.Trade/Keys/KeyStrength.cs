namespace ShedBot.Trade.Keys;

/// <summary>Torque a key carries before it shears or its side is crushed.</summary>
/// <remarks>
/// Source: key formulas of machine-element texts such as Shigley and Juvinall and Marshek [published]. On a tapered shaft the taper must
/// carry the torque and the key only lines the parts up (the use DIN 6888 lists second), so a sheared key means a loose nut. Never file a
/// key thin or put a nail in its place: it is the fuse.
/// </remarks>
public static class KeyStrength
{
    /// <summary>Shear strength as a share of tensile strength, 0.6 [common practice].</summary>
    public const double ShearShareOfTensile = 0.6;

    /// <summary>T = tau x b x l x d / 2.</summary>
    /// <param name="key">The key, measured or out of the standard's table.</param>
    /// <param name="shaftDiameter">Shaft diameter d at the key, more than 0; on a taper at the middle of the key.</param>
    /// <param name="shearStress">Shear stress tau to allow, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Torque InShear(WoodruffKey key, Length shaftDiameter, Pressure shearStress) =>
        Limits.MoreThanZero(shearStress) * key.ShearArea * (Limits.MoreThanZero(shaftDiameter) / 2);

    /// <summary>T = sigma x (h - t1) x l x d / 2.</summary>
    /// <param name="key">The key, measured or out of the standard's table.</param>
    /// <param name="shaftDiameter">Shaft diameter d at the key, more than 0.</param>
    /// <param name="bearingStress">Bearing stress sigma to allow on the softest of key, shaft and hub, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Torque InCrush(WoodruffKey key, Length shaftDiameter, Pressure bearingStress) =>
        Limits.MoreThanZero(bearingStress) * key.BearingArea * (Limits.MoreThanZero(shaftDiameter) / 2);

    /// <summary>Torque that shears the key off: <see cref="InShear"/> at 0.6 x the tensile strength.</summary>
    /// <param name="tensileStrength">
    /// Tensile strength of the key steel, more than 0; DIN 6888 asks for at least 60 kgf/mm2, 588 MPa [published].
    /// </param>
    /// <inheritdoc cref="InShear" path="/param"/>
    /// <inheritdoc cref="InShear" path="/exception"/>
    public static Torque AtBreak(WoodruffKey key, Length shaftDiameter, Pressure tensileStrength) =>
        InShear(key, shaftDiameter, ShearShareOfTensile * Limits.MoreThanZero(tensileStrength));
}
