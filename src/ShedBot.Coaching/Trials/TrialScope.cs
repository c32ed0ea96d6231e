using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Trials;

/// <summary>What differs between old and new rules, as ids in order.</summary>
/// <param name="Faults">New, retired, or with another chance, other signs or other facts that move it. That all chances are scaled alike is no difference here.</param>
/// <param name="Findings">New, retired, or with other states, phrases, or another chance of being seen anyway.</param>
/// <param name="Complaints">New, retired, or told in other phrases.</param>
/// <param name="Checks">New, retired, or of another cost, reliability or hazard.</param>
/// <param name="Repairs">New, retired, or of another cost, chance or hazard.</param>
/// <param name="Words">True when what riders write may be understood otherwise.</param>
/// <param name="Rescaled">True when the chances of faults that were left alone are scaled, as they are when a fault comes or goes.</param>
public sealed record TrialScope(
    ImmutableArray<string> Faults,
    ImmutableArray<string> Findings,
    ImmutableArray<string> Complaints,
    ImmutableArray<string> Checks,
    ImmutableArray<string> Repairs,
    bool Words,
    bool Rescaled)
{
    [JsonIgnore]
    public bool IsEmpty => Faults.IsEmpty && Findings.IsEmpty && Complaints.IsEmpty && Checks.IsEmpty && Repairs.IsEmpty && !Words && !Rescaled;
}
