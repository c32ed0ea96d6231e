using System.Collections.Immutable;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Trials.Telling;

/// <summary>Paints what a trial found. Safe to call from several threads.</summary>
/// <returns>A PNG, or null when it cannot be painted here; the card says the same in words.</returns>
public delegate ImmutableArray<byte>? TrialPainter(TrialReport report, PictureLook look);
