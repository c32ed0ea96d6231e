namespace ShedBot.Trade.Keys;

/// <summary>Which of the two ways to fail comes first.</summary>
public enum KeyLimit
{
    Shear,
    Crush,
}

/// <summary>Whether a key could carry the load alone, and what stops it if not.</summary>
/// <param name="Capacity">The lower of shear and crush torque.</param>
/// <param name="Limit">Which of them it is.</param>
/// <param name="Peak">Mean torque x shock factor.</param>
public sealed record KeyVerdict(Torque Capacity, KeyLimit Limit, Torque Peak)
{
    /// <summary>Capacity / peak; 1 or more holds.</summary>
    public double Margin => Capacity / Peak;

    /// <summary>False means the nut and the taper have to carry the drive: seat them, do not look for a harder key.</summary>
    public bool HoldsAlone => Margin >= 1;

    /// <summary>Sets a key against the torque asked of it.</summary>
    /// <param name="key">The key.</param>
    /// <param name="shaftDiameter">Shaft diameter at the key, more than 0.</param>
    /// <param name="shearStress">Shear stress to allow, more than 0.</param>
    /// <param name="bearingStress">Bearing stress to allow, more than 0.</param>
    /// <param name="meanTorque">Steady torque through the joint, more than 0.</param>
    /// <param name="shockFactor">Peak over mean, 1 to 10; 3 to 5 when a clutch is dumped [common practice].</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static KeyVerdict Judge(
        WoodruffKey key, Length shaftDiameter, Pressure shearStress, Pressure bearingStress, Torque meanTorque, double shockFactor)
    {
        var shear = KeyStrength.InShear(key, shaftDiameter, shearStress);
        var crush = KeyStrength.InCrush(key, shaftDiameter, bearingStress);
        var peak = Limits.MoreThanZero(meanTorque) * Limits.Between(shockFactor, 1, 10);
        return crush < shear ? new(crush, KeyLimit.Crush, peak) : new(shear, KeyLimit.Shear, peak);
    }
}
