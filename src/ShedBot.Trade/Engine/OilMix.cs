namespace ShedBot.Trade.Engine;

/// <summary>Oil for two-stroke fuel. The ratio is parts of fuel to one part of oil.</summary>
/// <remarks>Source: arithmetic. The oil comes on top of the fuel.</remarks>
public static class OilMix
{
    private const double LeastRatio = 1, MostRatio = 200;

    /// <summary>oil = fuel / R.</summary>
    /// <param name="fuel">Fuel without oil, 0 or more.</param>
    /// <param name="ratio">R, 1 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Volume OilFor(Volume fuel, double ratio) => Limits.ZeroOrMore(fuel) / Limits.Between(ratio, LeastRatio, MostRatio);
}
