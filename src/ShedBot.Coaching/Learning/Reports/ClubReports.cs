using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>All reports on a club's closed cases; each case is told anew once for all of them.</summary>
public sealed record ClubReports(
    ImmutableArray<MendedRow> WhatFixesWhat, GuessReport FirstGuesses, AskedReport AskedTooMuch, ImmutableArray<UnansweredRow> Unanswered, CalibrationReport Calibration)
{
    /// <param name="knowledge">The rules of today.</param>
    public static ClubReports Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases)
    {
        var retold = RetoldCase.All(knowledge, cases);
        return new ClubReports(
            Reports.WhatFixesWhat.From(retold),
            Reports.FirstGuesses.From(knowledge, retold),
            Reports.AskedTooMuch.From(retold),
            Reports.Unanswered.From(retold, new Discreet(knowledge).Bare),
            CalibrationReport.From(knowledge, retold));
    }
}
