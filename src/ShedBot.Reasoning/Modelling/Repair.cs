using System.Collections.Immutable;

namespace ShedBot.Reasoning.Modelling;

/// <summary>Something that can be done to mend faults, followed by a trial of the whole machine.</summary>
/// <param name="Id">A name that is unique among the repairs of a model.</param>
/// <param name="Cost">What it costs to do, the opening of its cover not counted.</param>
/// <param name="Fixes">The faults it can mend, each with P(mended | fault present, repair done), in (0, 1].</param>
/// <param name="Cover">The id of the cover it hides behind, or null.</param>
/// <param name="Hazard">How dangerous it is.</param>
public sealed record Repair(
    string Id, StepCost Cost, ImmutableArray<Fix> Fixes, string? Cover = null, Hazard Hazard = Hazard.None);

public sealed record Fix(string Fault, double Success);

/// <summary>A shared piece of dismantling: paid once, then everything behind it is open.</summary>
public sealed record Cover(string Id, StepCost OpeningCost);
