using System.Collections.Immutable;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>How a ride through a trouble ended, as one who knows the truth sees it.</summary>
public enum Ending
{
    /// <summary>The trouble is gone.</summary>
    Mended,

    /// <summary>The rider took it for mended, and it is not.</summary>
    TakenForMended,

    /// <summary>A human goes on.</summary>
    HandedOver,

    /// <summary>A finding that means 'stop riding' was there.</summary>
    StoppedRightly,

    /// <summary>A finding that means 'stop riding' was reported, and is not there.</summary>
    StoppedWrongly,
}

/// <summary>One rider's way from the complaint to the end.</summary>
/// <param name="RightCause">The cause that led when the repair was shown is one that this repair mended, and the trouble is gone.</param>
/// <param name="NamedByRepair">The likeliest of the causes that the repair is for is one that it mended, and the trouble is gone.</param>
/// <param name="Lead">The id of the cause that led at the end; null where nothing was believed.</param>
/// <param name="Asked">Questions and checks.</param>
/// <param name="Repairs">Repairs that were tried.</param>
public sealed record Ride(
    Rider Rider, Ending Ending, bool RightCause, bool NamedByRepair, string? Lead, int Asked, int Repairs, double Minutes, double Cost)
{
    /// <summary>What was believed at the two points at which beliefs are scored; null where the ride never came to it.</summary>
    public Believed? AfterComplaint { get; init; }

    public Believed? BeforeRepair { get; init; }

    /// <summary>The cause that led at the end is there, or was until it was mended.</summary>
    public bool LeadIsThere => Lead is not null && Rider.Machine.Faults.Contains(Lead);

    /// <summary>True when nothing of what is wrong with this bike can be mended by a repair that is coached, so that a human is the right end.</summary>
    /// <param name="mendable">The ids of the faults that can.</param>
    public bool BeyondTheCoach(IReadOnlySet<string> mendable) => !Rider.Machine.Faults.Any(mendable.Contains);
}

/// <summary>The chance of every fault at one point, with the truth beside it.</summary>
/// <param name="All">One forecast a fault of the bike's model, in its order.</param>
/// <param name="Lead">The forecast of the likeliest.</param>
public sealed record Believed(ImmutableArray<Forecast> All, Forecast Lead);
