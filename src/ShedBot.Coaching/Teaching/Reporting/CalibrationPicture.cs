using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>What a report is to be painted from; the card beside it says the same in words.</summary>
public sealed record CalibrationPicture(CalibrationReport Report, PictureLook Look);
