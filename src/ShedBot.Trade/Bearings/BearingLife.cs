namespace ShedBot.Trade.Bearings;

/// <summary>Basic rating life of a ball bearing: what 90 of 100 clean, greased bearings outlast.</summary>
/// <remarks>
/// Source: ISO 281, basic rating life [published]. The standard holds it for loads up to half the dynamic rating. Makers publish 6.0 to
/// 7.8 kN for the same 6202, so the rating is an argument: take it from the box. Dirt and dry grease end a shaft bearing long before this.
/// </remarks>
public static class BearingLife
{
    /// <summary>L10 = (C / P)^3, in millions of turns.</summary>
    /// <param name="dynamicRating">Dynamic load rating C from the maker, more than 0.</param>
    /// <param name="load">Equivalent load P, more than 0 and at most C / 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static double MillionTurns(Force dynamicRating, Force load)
    {
        Limits.MoreThanZero(dynamicRating);
        Limits.MoreThanZero(load);
        Limits.AtMost(load, dynamicRating / 2, "half the dynamic rating");
        return Math.Pow(dynamicRating / load, 3);
    }

    /// <summary>L10 in running time: L10 x 10^6 / n.</summary>
    /// <param name="speed">Shaft speed n, more than 0; the clutch shaft turns at engine speed / primary ratio.</param>
    /// <inheritdoc cref="MillionTurns" path="/param"/>
    /// <inheritdoc cref="MillionTurns" path="/exception"/>
    public static Duration RunningTime(Force dynamicRating, Force load, RotationalSpeed speed) =>
        Duration.FromMinutes(
            MillionTurns(dynamicRating, load) * 1e6 / Limits.MoreThanZero(speed).RevolutionsPerMinute);
}
