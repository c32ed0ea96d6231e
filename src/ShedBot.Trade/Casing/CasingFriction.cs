namespace ShedBot.Trade.Casing;

/// <summary>Friction values of a brake-type cable in its casing, dimensionless; all [from memory], for comparing routes, not for promises.</summary>
public static class CasingFriction
{
    public const double LinedAndOiled = 0.05;

    /// <summary>A plain casing that has been oiled.</summary>
    public const double Oiled = 0.10;

    public const double DrySteel = 0.15;

    public const double Rusty = 0.20;
}
