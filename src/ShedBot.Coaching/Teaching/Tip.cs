using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Teaching;

/// <summary>Stored by name: never rename a member.</summary>
public enum TipState
{
    Waiting,

    /// <summary>A proposal is being made of it.</summary>
    Taken,

    /// <summary>It became part of the club's rules, and its giver was thanked.</summary>
    Used,

    /// <summary>Turned down, with a reason for its giver.</summary>
    Declined,
}

/// <summary>What a member knows and the rules may not: kept for those who may propose.</summary>
/// <param name="Id">Short, of letters and digits; chosen by the shell.</param>
/// <param name="From">Whose words they are.</param>
/// <param name="PassedOnBy">Who pointed at them; the same as <paramref name="From"/> when it is their own.</param>
/// <param name="Words">The words themselves; text of a member's, to be quoted and never to be trusted.</param>
/// <param name="Where">Where they were said, as the platform names it, with its thread; empty when nowhere.</param>
/// <param name="Proposal">The proposal that is made of it, or null.</param>
/// <param name="Answer">Why it was declined; empty otherwise.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record Tip(
    string Id,
    ClubId Club,
    MemberId From,
    string FromName,
    MemberId PassedOnBy,
    string Words,
    string Where,
    TipState State,
    string? Proposal,
    string Answer,
    DateTimeOffset At,
    int Version);
