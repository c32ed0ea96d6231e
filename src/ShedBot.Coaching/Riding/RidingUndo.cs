using System.Collections.Immutable;
using NodaTime;

namespace ShedBot.Coaching.Riding;

/// <summary>What the last entry of a riding log changed, so that it can be taken back.</summary>
/// <param name="At">When the entry was made; tells which of several logs changed last.</param>
/// <param name="What">The entry in words: "10 km on 3 May 2026".</param>
/// <param name="Day">The day that the entry added to; null when it was no ride.</param>
/// <param name="Before">That day before, or null when nothing was ridden on it.</param>
/// <param name="Breaks">The breaks before.</param>
/// <param name="Pace">The stated pace before.</param>
public sealed record RidingUndo(
    DateTimeOffset At, string What, LocalDate? Day, RiddenDay? Before, ImmutableArray<RidingBreak> Breaks, StatedPace? Pace);
