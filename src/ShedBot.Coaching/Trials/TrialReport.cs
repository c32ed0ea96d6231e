using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Worlds;

namespace ShedBot.Coaching.Trials;

/// <summary>What would change if proposed rules went live. Holds no words of members, no names and no ids of cases: it may be kept and shown.</summary>
/// <param name="OldVersion">Of the rules that were tried against.</param>
/// <param name="Scope">What differs.</param>
/// <param name="Replay">The club's closed cases.</param>
/// <param name="Worlds">Simulated riders: first if the new rules are right, then if the old ones are.</param>
public sealed record TrialReport(
    string OldVersion, string NewVersion, TrialScope Scope, ReplayPart Replay, ImmutableArray<WorldPart> Worlds, SafetyPart Safety)
{
    /// <summary>Findings and emergencies that the old rules reached and the new ones do not; such rules must not be published. One plain clause each.</summary>
    [JsonIgnore]
    public ImmutableArray<string> SafetyLost => Safety.Lost;

    [JsonIgnore]
    public bool IsSafe => SafetyLost.IsEmpty;

    /// <summary>Of all parts; worse, whatever else, where safety is lost.</summary>
    [JsonIgnore]
    public Verdict Verdict => IsSafe ? Verdicts.Together([Replay.Verdict, .. Worlds.Select(w => w.Verdict)]) : Verdict.Worse;
}
