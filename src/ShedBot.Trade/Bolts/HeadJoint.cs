namespace ShedBot.Trade.Bolts;

/// <summary>What the gas tries to do to the cylinder head studs.</summary>
public static class HeadJoint
{
    /// <summary>Gas load per stud = p x pi/4 x B^2 / number of studs.</summary>
    /// <param name="peakPressure">Highest gas pressure p, more than 0.</param>
    /// <param name="bore">Cylinder bore B, more than 0.</param>
    /// <param name="studs">Number of head studs, 2 to 12.</param>
    /// <remarks>Source: statics [published]. The preload of each stud must stay well above it; see <see cref="Tightening.Preload"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Force GasLoadPerStud(Pressure peakPressure, Length bore, int studs)
    {
        var b = Limits.MoreThanZero(bore).Meters;
        return Force.FromNewtons(
            Limits.MoreThanZero(peakPressure).Pascals * Math.PI / 4 * b * b / Limits.Between(studs, 2, 12));
    }
}
