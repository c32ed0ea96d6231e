namespace ShedBot.Trade.Clutch;

/// <summary>Does the clutch hold? Capacity set against what the engine asks of it behind the primary gears.</summary>
/// <remarks>
/// The clutch sits on the output shaft, after the primary reduction, so it sees engine torque times that ratio. Source: kinematics and
/// the definition of a safety factor [published].
/// </remarks>
public static class SlipMargin
{
    /// <summary>Least margin to look for with the clutch warm: 1.3 [from memory].</summary>
    public const double LeastWarm = 1.3;

    /// <summary>Torque asked of the clutch = engine torque x primary ratio.</summary>
    /// <param name="engineTorque">Crankshaft torque, 0 or more.</param>
    /// <param name="primary">Primary reduction, more than 0 and at most 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Torque Demand(Torque engineTorque, double primary) =>
        Limits.ZeroOrMore(engineTorque) * Limits.MoreThanZeroUpTo(primary, 100);

    /// <summary>Margin = capacity / demand. Below 1 it slips at full torque; below <see cref="LeastWarm"/> expect slip once warm.</summary>
    /// <param name="capacity">What the clutch carries, 0 or more; see <see cref="ClutchTorque"/>.</param>
    /// <param name="demand">What is asked of it, more than 0; see <see cref="Demand"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static double Of(Torque capacity, Torque demand) =>
        Limits.ZeroOrMore(capacity) / Limits.MoreThanZero(demand);

    /// <summary>Clamp force for a wanted margin with separate pads: F = margin x demand / (N x mu x r).</summary>
    /// <param name="demand">Torque asked of the clutch, 0 or more.</param>
    /// <param name="margin">Wanted margin, more than 0 and at most 10.</param>
    /// <param name="faces">Working friction faces N, 1 to 20.</param>
    /// <param name="friction">Friction value mu, more than 0 and at most 1.</param>
    /// <param name="padCircleRadius">Radius r of the circle through the pad centres, more than 0.</param>
    /// <remarks>With oily pads the answer is several times any spring's force: clean the pads, do not tighten.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static Force ClampNeeded(Torque demand, double margin, int faces, double friction, Length padCircleRadius) =>
        Force.FromNewtons(
            Limits.ZeroOrMore(demand).NewtonMeters * Limits.MoreThanZeroUpTo(margin, 10)
            / ClutchTorque.DiscretePads(faces, friction, Force.FromNewtons(1), padCircleRadius).NewtonMeters);
}
