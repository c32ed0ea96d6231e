namespace ShedBot.Trade.Bolts;

/// <summary>Preload and tightening torque of a bolt or stud.</summary>
/// <remarks>
/// Source: Shigley, Mechanical Engineering Design, bolted joints: F = 0.75 S_p A_s for joints that are taken apart again, T = K F d
/// [published]. Torque is a rough guide to preload, within about 30 % either way. These are limits of the BOLT: a thread in aluminium
/// may strip first, so check <see cref="ThreadEngagement"/> and never add torque to a weak thread. A thread-locker is not a torque.
/// </remarks>
public static class Tightening
{
    private const double ShareOfProof = 0.75;

    /// <summary>Torque factor K for a thread condition, dimensionless.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a named condition.</exception>
    public static double TorqueFactor(ThreadCondition condition) => condition switch
    {
        ThreadCondition.Dry => 0.20,
        ThreadCondition.Oiled => 0.15,
        _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Must be Dry or Oiled."),
    };

    /// <summary>Tension at which lasting stretch begins: S_p x A_s.</summary>
    public static Force ProofLoad(MetricThread thread, PropertyClass strength) => strength.ProofStress * thread.StressArea;

    /// <summary>Preload to aim for: F = 0.75 S_p A_s.</summary>
    public static Force Preload(MetricThread thread, PropertyClass strength) => ShareOfProof * ProofLoad(thread, strength);

    /// <summary>Torque for that preload: T = K F d.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a named condition.</exception>
    public static Torque ForPreload(MetricThread thread, PropertyClass strength, ThreadCondition condition) =>
        TorqueFactor(condition) * (Preload(thread, strength) * thread.Diameter);

    /// <summary>How much of the proof load a torque uses up on this thread: T / (K d) / (S_p A_s).</summary>
    /// <param name="applied">Torque put on, 0 or more.</param>
    /// <returns>0.75 is the aim; above 1 the bolt stretches for good or breaks.</returns>
    /// <remarks>Shows what a figure meant for a larger thread does to a smaller one.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative torque, or not a named condition.</exception>
    public static double ShareOfProofUsed(
        Torque applied, MetricThread thread, PropertyClass strength, ThreadCondition condition) =>
        Limits.ZeroOrMore(applied) / (TorqueFactor(condition) * thread.Diameter) / ProofLoad(thread, strength);
}
