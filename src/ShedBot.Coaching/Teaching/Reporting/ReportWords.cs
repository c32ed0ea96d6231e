using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Reads which report is typed for.</summary>
internal static class ReportWords
{
    /// <param name="line">In small letters, as in "fixes" or "chances light".</param>
    /// <returns>Null when it is none.</returns>
    public static ShowReport? Read(string line)
    {
        var look = line.EndsWith(" light", StringComparison.Ordinal) ? PictureLook.Light : PictureLook.Dark;
        return (look == PictureLook.Light ? line[..^" light".Length] : line).Replace(" dark", "", StringComparison.Ordinal) switch
        {
            "fixes" or "what fixes what" or "what fixes" => new ShowReport(ReportKind.WhatFixesWhat),
            "guesses" or "first guesses" or "wrong first guesses" or "wrong guesses" => new ShowReport(ReportKind.FirstGuesses),
            "questions" or "asked too much" or "too much" => new ShowReport(ReportKind.AskedTooMuch),
            "unanswered" or "nobody could answer" or "complaints nobody could answer" or "next rules" => new ShowReport(ReportKind.Unanswered),
            "chances" or "calibration" => new ShowReport(ReportKind.Calibration, look),
            _ => null,
        };
    }
}
