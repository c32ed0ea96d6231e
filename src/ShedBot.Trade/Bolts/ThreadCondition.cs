namespace ShedBot.Trade.Bolts;

/// <summary>How slippery the threads are; a dry figure put on oiled threads overstretches the bolt by a third.</summary>
public enum ThreadCondition
{
    /// <summary>Clean and dry: torque factor K = 0.20. Source: Shigley, bolted joints, the value for an unknown condition [published].</summary>
    Dry,

    /// <summary>
    /// Oiled: K = 0.15 [common practice, fastener charts]. Shigley's own table has 0.18 for lubricated; the lower one errs towards a bolt
    /// that is not overstretched.
    /// </summary>
    Oiled,
}
