using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShedBot.Coaching.Trials.Scoring;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>The club's closed cases, judged once more under both rules from what was learnt in them.</summary>
/// <param name="Cases">Cases with a complaint that the rules can read.</param>
/// <param name="Touched">Those whose belief the change can move at all; the others come out exactly alike and are not worked out.</param>
/// <param name="Confirmed">Those of all of them that ended with a repair that held, so that the cause is known.</param>
/// <param name="Unread">Cases left out: no complaint, or nothing that the rules can read.</param>
/// <param name="Points">The beliefs at fixed points, of the touched cases with a known cause.</param>
/// <param name="Leads">What becomes of the leading cause, of all touched cases.</param>
/// <param name="Next">What would be done next, on a sample.</param>
/// <param name="OldBins">How far the chance of the leading cause could be taken at its word, before the first repair.</param>
public sealed record ReplayPart(
    int Cases,
    int Touched,
    int Confirmed,
    int Unread,
    ImmutableArray<ReplayPoint> Points,
    LeadChanges Leads,
    NextSteps Next,
    ImmutableArray<TrialBin> OldBins,
    ImmutableArray<TrialBin> NewBins)
{
    public static ReplayPart None { get; } = new(0, 0, 0, 0, [], new LeadChanges(0, 0, 0, 0, []), new NextSteps(0, 0, 0, []), [], []);

    /// <summary>From the points before all is known; at the end the belief is near 1 whatever the rules.</summary>
    [JsonIgnore]
    public Verdict Verdict => Verdicts.Together(
        Points.Where(p => p.At != TrialPoint.AtEnd).SelectMany(p => p.Measures).Where(m => Measures.Counts(m.Measure)).Select(m => m.Verdict));
}

/// <summary>Where in a case a belief is scored. Stored by name: never rename a member.</summary>
public enum TrialPoint
{
    AfterComplaint,

    BeforeRepair,

    AtEnd,
}

/// <param name="Measures">Right lead, Brier, log score and calibration error.</param>
public sealed record ReplayPoint(TrialPoint At, ImmutableArray<Compared> Measures);

/// <summary>The cause that led before the first repair; where no repair was shown, at the end.</summary>
/// <param name="Changed">Cases in which another cause would have led.</param>
/// <param name="ToTruth">Of them, those in which the new one is what was mended, and the old one is not.</param>
/// <param name="FromTruth">Those in which it is the other way round.</param>
/// <param name="Unknown">Those whose cause never came out.</param>
/// <param name="Commonest">From which cause to which, most often first.</param>
public sealed record LeadChanges(int Changed, int ToTruth, int FromTruth, int Unknown, ImmutableArray<Swap> Commonest);

/// <param name="Old">An id, or in <see cref="NextSteps"/> a step.</param>
public sealed record Swap(string Old, string New, int Count);

/// <summary>What the coach would do right after the complaint, in the commonest situations of the touched and untouched cases.</summary>
/// <param name="Situations">How many were looked at.</param>
/// <param name="Cases">For how many cases they stand.</param>
/// <param name="Changed">In how many of these cases the next step is another one.</param>
public sealed record NextSteps(int Situations, int Cases, int Changed, ImmutableArray<Swap> Commonest);
