using System.Collections.Immutable;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Paints how far the coach's chances could be taken at their word. Safe to call from several threads.</summary>
/// <returns>A PNG, or null when it cannot be painted here; the card says the same in words.</returns>
public delegate ImmutableArray<byte>? CalibrationPainter(CalibrationReport report, PictureLook look);
