using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;

namespace ShedBot.Coaching.Trials.Worlds;

/// <summary>Which rules the simulated bikes follow. Stored by name: never rename a member.</summary>
public enum TrialWorld
{
    /// <summary>The new rules are right.</summary>
    NewRight,

    /// <summary>The old rules are right.</summary>
    OldRight,
}

/// <summary>Riders of one world, each coached under both rules.</summary>
/// <param name="Touched">Riders drawn among those whom the change touches, each changed thing alike often.</param>
/// <param name="AtLarge">Riders as they come.</param>
public sealed record WorldPart(TrialWorld World, RiderGroup Touched, RiderGroup AtLarge)
{
    [JsonIgnore]
    public Verdict Verdict => Verdicts.Together([Touched.Verdict, AtLarge.Verdict]);
}

/// <param name="Riders">How many there are.</param>
/// <param name="LeadChanged">How many ended with another cause in front.</param>
/// <param name="Commonest">From which to which, most often first; "nothing" where none led.</param>
public sealed record RiderGroup(
    int Riders, int LeadChanged, ImmutableArray<Swap> Commonest, ImmutableArray<Compared> Measures, ImmutableArray<TrialBin> OldBins, ImmutableArray<TrialBin> NewBins)
{
    [JsonIgnore]
    public Verdict Verdict => Verdicts.Together(Measures.Where(m => Scoring.Measures.Counts(m.Measure)).Select(m => m.Verdict));
}
