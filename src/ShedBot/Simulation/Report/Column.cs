using ShedBot.Coaching.Simulating;
using ShedBot.Coaching.Simulating.Rides;

namespace ShedBot.Simulation.Report;

/// <summary>What came of all riders with one way of choosing the steps. Shares are of all riders, in [0, 1].</summary>
/// <param name="RightCause">Mended, and the cause that led was right; null where no cause is ever named.</param>
/// <param name="NamedByRepair">Mended, and of the causes that the repair is for the likeliest was right; null likewise.</param>
/// <param name="RightEnd">Mended, rightly stopped, or handed to a human because no repair that is coached mends it.</param>
/// <param name="HandedOverKnowing">Handed over while a cause led that is there; null likewise.</param>
/// <param name="Cost">Mean cost in minutes, help included where it was needed.</param>
internal sealed record Column(
    Figure? RightCause,
    Figure? NamedByRepair,
    Figure Mended,
    Figure RightEnd,
    Figure TakenForMended,
    Figure HandedOver,
    Figure? HandedOverKnowing,
    Figure StoppedRightly,
    Figure StoppedWrongly,
    double AskedMedian,
    double AskedNinetieth,
    Figure Repairs,
    double MinutesMedian,
    double MinutesNinetieth,
    Figure Minutes,
    Figure Cost)
{
    /// <param name="mendable">The ids of the faults that a coached repair can mend.</param>
    /// <param name="names">True when this way names a cause.</param>
    public static Column Of(IReadOnlyList<Ride> rides, IReadOnlySet<string> mendable, int seed, bool names) => new(
        names ? Share(rides, r => r.RightCause) : null,
        names ? Share(rides, r => r.NamedByRepair) : null,
        Share(rides, r => r.Ending == Ending.Mended),
        Share(rides, r => r.Ending is Ending.Mended or Ending.StoppedRightly || (r.Ending == Ending.HandedOver && r.BeyondTheCoach(mendable))),
        Share(rides, r => r.Ending == Ending.TakenForMended),
        Share(rides, r => r.Ending == Ending.HandedOver),
        names ? Share(rides, r => r.Ending == Ending.HandedOver && r.LeadIsThere) : null,
        Share(rides, r => r.Ending == Ending.StoppedRightly),
        Share(rides, r => r.Ending == Ending.StoppedWrongly),
        Figure.Quantile(rides.Select(r => (double)r.Asked), 0.5),
        Figure.Quantile(rides.Select(r => (double)r.Asked), 0.9),
        Figure.Mean([.. rides.Select(r => (double)r.Repairs)], seed),
        Figure.Quantile(rides.Select(r => r.Minutes), 0.5),
        Figure.Quantile(rides.Select(r => r.Minutes), 0.9),
        Figure.Mean([.. rides.Select(r => r.Minutes)], seed),
        Figure.Mean([.. rides.Select(r => r.Cost)], seed));

    private static Figure Share(IReadOnlyList<Ride> rides, Func<Ride, bool> which) => Figure.Share(rides.Count(which), rides.Count);
}
