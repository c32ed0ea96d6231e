namespace ShedBot.Trade.Gearing;

/// <summary>Reductions from counted teeth. Every ratio here is input turns per output turn, so more than 1 slows down.</summary>
/// <remarks>Source: kinematics [published]. Primaries with 82 and with 83 teeth are reported: count them, never assume.</remarks>
public static class GearRatio
{
    private const int FewestTeeth = 5, MostTeeth = 300;

    /// <summary>Driven teeth / driving teeth: the primary (clutch gear / crank gear) or the final drive (rear / small sprocket).</summary>
    /// <param name="driven">Teeth of the wheel that is driven, 5 to 300.</param>
    /// <param name="driving">Teeth of the wheel that drives it, 5 to 300.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tooth count outside 5 to 300.</exception>
    public static double FromTeeth(int driven, int driving) =>
        (double)Limits.Between(driven, FewestTeeth, MostTeeth) / Limits.Between(driving, FewestTeeth, MostTeeth);

    /// <summary>Crankshaft turns per turn of the rear wheel: primary x final drive.</summary>
    /// <param name="primary">Primary reduction, more than 0 and at most 100.</param>
    /// <param name="final">Chain reduction, more than 0 and at most 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">A ratio outside its range.</exception>
    public static double Overall(double primary, double final) =>
        Limits.MoreThanZeroUpTo(primary, 100) * Limits.MoreThanZeroUpTo(final, 100);
}
