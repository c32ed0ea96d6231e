using ShedBot.Coaching.Logbook;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>What a report tells of. Its names stand in the ids of options: never rename a member.</summary>
public enum ReportKind
{
    WhatFixesWhat,

    /// <summary>What led first, where it was not what was mended.</summary>
    FirstGuesses,
    AskedTooMuch,

    /// <summary>Complaints nobody could answer.</summary>
    Unanswered,

    /// <summary>Whether its chances could be taken at their word.</summary>
    Calibration,
}

/// <summary>The reports to choose from.</summary>
public sealed record ShowReports() : TeachRequest(TeachingRights.Propose);

/// <summary>One report, from the club's closed cases and by its rules of today. With many cases it takes a while.</summary>
/// <param name="Look">Of its picture, where it has one.</param>
public sealed record ShowReport(ReportKind Kind, PictureLook Look = PictureLook.Dark) : TeachRequest(TeachingRights.Propose);

/// <summary>Words that were not understood, ranked.</summary>
/// <param name="From">The place of the first one to show; 0 for the top.</param>
public sealed record ShowUnheard(int From = 0) : TeachRequest(TeachingRights.Propose);

/// <summary>Words that were not understood, with what they may mean.</summary>
/// <param name="Words">Their short name.</param>
public sealed record ShowUnheardWords(string Words) : TeachRequest(TeachingRights.Propose);

/// <summary>Looks among all that words may mean for what is typed.</summary>
/// <param name="Words">Their short name.</param>
public sealed record SearchMeaning(string Words, string Typed) : TeachRequest(TeachingRights.Propose);

/// <summary>Begins the sheet by which words are taught, with all that is known filled in.</summary>
/// <param name="Words">Their short name.</param>
/// <param name="Meaning">The short name of what they mean; empty when that is to be asked.</param>
public sealed record TeachMeaning(string Words, string Meaning) : TeachRequest(TeachingRights.Propose);

/// <summary>Says that words mean nothing: they go from the list.</summary>
/// <param name="Words">Their short name.</param>
public sealed record DropUnheard(string Words) : TeachRequest(TeachingRights.Propose);

/// <summary>What could be looked at where a complaint found no answer; each begins the sheet for a check.</summary>
/// <param name="Complaint">Its id.</param>
public sealed record ChooseCheckFor(string Complaint) : TeachRequest(TeachingRights.Propose);
