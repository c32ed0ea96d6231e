using System.Collections.Immutable;
using ShedBot.Coaching.Simulating;
using ShedBot.Coaching.Simulating.Rides;

namespace ShedBot.Simulation.Report;

/// <summary>How the riders with one fault fared.</summary>
/// <param name="TakenFor">Causes that led at the end instead of this one, with how often, most often first.</param>
internal sealed record ConfusionRow(
    string Fault, int Riders, int RightCause, int Mended, int HandedOver, int Stopped, int TakenForMended, double AskedMedian, double RepairsMean,
    ImmutableArray<(string Cause, int Count)> TakenFor);

internal static class Confusion
{
    /// <summary>One row a fault, worst first; of riders with several faults, one in each row.</summary>
    public static ImmutableArray<ConfusionRow> Of(IEnumerable<Ride> rides) =>
    [
        .. rides.SelectMany(r => r.Rider.Machine.Faults.Select(f => (Fault: f, Ride: r)))
            .GroupBy(r => r.Fault, (fault, group) => Row(fault, [.. group.Select(g => g.Ride)]), StringComparer.Ordinal)
            .OrderBy(r => (double)r.RightCause / r.Riders).ThenBy(r => r.Fault, StringComparer.Ordinal),
    ];

    private static ConfusionRow Row(string fault, List<Ride> rides) => new(
        fault,
        rides.Count,
        rides.Count(r => r.RightCause),
        rides.Count(r => r.Ending == Ending.Mended),
        rides.Count(r => r.Ending == Ending.HandedOver),
        rides.Count(r => r.Ending is Ending.StoppedRightly or Ending.StoppedWrongly),
        rides.Count(r => r.Ending == Ending.TakenForMended),
        Figure.Quantile(rides.Select(r => (double)r.Asked), 0.5),
        rides.Average(r => r.Repairs),
        [
            .. rides.Where(r => r.Lead is not null && r.Lead != fault).GroupBy(r => r.Lead!, StringComparer.Ordinal)
                .Select(g => (Cause: g.Key, Count: g.Count()))
                .OrderByDescending(c => c.Count).ThenBy(c => c.Cause, StringComparer.Ordinal),
        ]);
}
