using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching;

/// <summary>Stored by name: never rename a member.</summary>
public enum ProposalState
{
    /// <summary>Being written; only its author sees it.</summary>
    Draft,

    /// <summary>Handed in, for those who may publish.</summary>
    Proposed,

    Published,

    /// <summary>Turned down, with a reason.</summary>
    Refused,

    /// <summary>Put away by its author.</summary>
    Withdrawn,
}

/// <summary>What is to change in a club's rules, from the first word of it to its end.</summary>
/// <param name="Id">Short, of letters and digits; chosen by the shell.</param>
/// <param name="Sheet">The guided sheet on which it is written, by its name; empty for one that came as a file or was learnt.</param>
/// <param name="Answers">What the sheet was told so far, question to answers.</param>
/// <param name="Title">What it would change, in a few words; empty while nobody can tell.</param>
/// <param name="Changes">The changes, as text; empty until the sheet is full.</param>
/// <param name="Learnt">What it would have the club learn, as its own text; empty for a change of rules.</param>
/// <param name="Tip">The tip it was made of, or null.</param>
/// <param name="Trial">The newest trial, or null.</param>
/// <param name="Reason">Why it was refused; empty otherwise.</param>
/// <param name="Edition">The edition that it was published as; 0 before.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record Proposal(
    string Id,
    ClubId Club,
    MemberId By,
    string ByName,
    ProposalState State,
    string Sheet,
    ImmutableSortedDictionary<string, ImmutableArray<string>> Answers,
    string Title,
    string Changes,
    string Learnt,
    string? Tip,
    ProposalTrial? Trial,
    string Reason,
    int Edition,
    DateTimeOffset BegunAt,
    DateTimeOffset ChangedAt,
    int Version)
{
    public static Proposal New(string id, Teacher by, string sheet, DateTimeOffset now) => new(
        id, by.Club, by.Who, by.Name, ProposalState.Draft, sheet, ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal),
        "", "", "", null, null, "", 0, now, now, 0);

    public bool IsOpen => State is ProposalState.Draft or ProposalState.Proposed;
}

/// <summary>A trial that was made.</summary>
/// <param name="Changes">A short name of exactly the changes that were tried, so that a trial of others is not taken for one of these.</param>
/// <param name="Edition">The club's edition that it was tried against; 0 for none.</param>
/// <param name="Base">The version of the project's rules.</param>
/// <param name="Report">The report, as its own text.</param>
/// <param name="Safe">False when it made a safety finding unreachable: then it cannot be published.</param>
public sealed record ProposalTrial(string Changes, int Edition, string Base, string Report, bool Safe, DateTimeOffset At);
