using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Trials.Safety;

/// <summary>Whether what means 'stop' is still found.</summary>
/// <param name="States">Every state of a finding that means 'stop riding' under either rules.</param>
/// <param name="Lost">What the old rules reached and the new ones do not, one plain clause each; empty when nothing is lost.</param>
public sealed record SafetyPart(ImmutableArray<StopState> States, int EmergencyPhrases, int StillHeard, ImmutableArray<string> Lost)
{
    public static SafetyPart None { get; } = new([], 0, 0, []);
}

/// <param name="Finding">An id.</param>
/// <param name="State">An id.</param>
/// <param name="OldTells">True when a check tells it that may be coached and can pay for itself.</param>
/// <param name="Riders">Riders drawn whose bike truly shows it.</param>
/// <param name="OldStopped">How many of them were told to stop.</param>
public sealed record StopState(string Finding, string State, bool OldTells, bool NewTells, int Riders, int OldStopped, int NewStopped)
{
    /// <summary>Stopped by the old rules so often and never by the new ones: no chance any more.</summary>
    public const int PlainlyLost = 4;

    /// <summary>True when the old rules come upon it and the new ones do not.</summary>
    [JsonIgnore]
    public bool IsLost => (OldTells && !NewTells) || (OldStopped >= PlainlyLost && NewStopped == 0);
}
