using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching;

/// <summary>Stored by name: never rename a member.</summary>
public enum AuditAct
{
    Began,
    Changed,
    Proposed,
    Tried,
    Published,
    TookBack,
    Refused,
    Withdrew,
    TipCame,
    TipTaken,
    TipUsed,
    TipDeclined,
    Uploaded,
    Downloaded,
    ChoseSettings,
    Learnt,
    DroppedWords,
}

/// <summary>One line of what was done to a club's rules. Written in the same transaction as what it tells of, and never changed.</summary>
/// <param name="Number">Within the club, growing; given by the store: 0 before it is kept.</param>
/// <param name="Who">Who did it; null for ShedBot itself, or somebody who has left.</param>
/// <param name="Name">What they were called; empty when there is nobody to call.</param>
/// <param name="Subject">The id of the proposal or tip, or the number of the edition; empty where there is none.</param>
/// <param name="What">What changed, in a line or a few; may quote members.</param>
public sealed record AuditEntry(ClubId Club, long Number, MemberId? Who, string Name, AuditAct Act, string Subject, string What, DateTimeOffset At);
