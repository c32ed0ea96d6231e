using System.Collections.Immutable;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Planning;

/// <summary>What the planner is to decide from.</summary>
/// <param name="Belief">What is believed about the machine as it is now.</param>
public sealed record PlanRequest(Belief Belief)
{
    /// <summary>How minutes, money and effort are joined to one cost.</summary>
    public CostWeights Weights { get; init; } = new();

    /// <summary>Steps with a greater hazard are removed before anything is weighed; hazard is never traded against minutes.</summary>
    public Hazard HazardLimit { get; init; } = Hazard.High;

    /// <summary>Checks that are done, cannot be done, or are not to be asked again.</summary>
    public ImmutableHashSet<string> ChecksClosed { get; init; } = [];

    /// <summary>Repairs that are done, cannot be done, or are not to be proposed again.</summary>
    public ImmutableHashSet<string> RepairsClosed { get; init; } = [];

    /// <summary>What each repair's chances of success are multiplied by, in (0, 1], such as for a second try by the same hands; 1 where absent.</summary>
    public ImmutableDictionary<string, double> RepairSuccessFactor { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <summary>Covers that are already off: what is behind them costs no opening.</summary>
    public ImmutableHashSet<string> OpenCovers { get; init; } = [];

    /// <summary>Covers that cannot be taken off: everything behind them is out of reach, whatever <see cref="OpenCovers"/> says.</summary>
    public ImmutableHashSet<string> ClosedCovers { get; init; } = [];
}
