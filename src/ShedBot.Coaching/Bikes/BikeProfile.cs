using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;

namespace ShedBot.Coaching.Bikes;

/// <summary>What is known of a bike. Every fact is optional, and carries when and how it was learnt.</summary>
/// <param name="Name">What the member calls it; empty when they have not said.</param>
/// <param name="Facts">By the id of the fact rule.</param>
/// <param name="Work">Repairs through cases, in the order they were proved.</param>
/// <param name="Riding">How it was ridden.</param>
/// <param name="Done">Service tasks that were done, in the order they were told.</param>
/// <param name="Handled">Events that made entries outside cases, newest last, at most <see cref="MostHandled"/>: one that comes again is not entered twice.</param>
/// <param name="Version">Grows by one with each save.</param>
public sealed record BikeProfile(
    BikeId Id,
    MemberId Owner,
    string Name,
    ImmutableSortedDictionary<string, BikeFact> Facts,
    ImmutableArray<WorkDone> Work,
    RidingLog Riding,
    ImmutableArray<ServiceDone> Done,
    ImmutableArray<string> Handled,
    int Version)
{
    public const int MostHandled = 20;

    public static BikeProfile New(BikeId id, MemberId owner) =>
        new(id, owner, "", ImmutableSortedDictionary.Create<string, BikeFact>(StringComparer.Ordinal), [], RidingLog.None, [], [], 0);
}

/// <param name="Learnt">When it was learnt.</param>
/// <param name="How">told, heard (in free words) or done (a repair through a case).</param>
public sealed record BikeFact(string Value, DateTimeOffset Learnt, string How);

/// <summary>Work that was done on the bike and proved.</summary>
/// <param name="Repair">The id of the repair rule.</param>
/// <param name="What">Its words at the time, so that the log reads on when rules change.</param>
public sealed record WorkDone(string Repair, string What, CaseId Case, DateTimeOffset At);
