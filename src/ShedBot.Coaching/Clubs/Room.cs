using System.Collections.Immutable;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Clubs;

/// <summary>Stored by name: never rename a member.</summary>
public enum RoomState
{
    /// <summary>A case goes on here, or is to begin.</summary>
    Open,

    /// <summary>The case is closed and the room was put away; it opens again when the trouble comes back.</summary>
    Closed,

    /// <summary>The platform's place is gone, or closed to us for good: nothing more is said there.</summary>
    Gone,
}

/// <summary>Where one member's case is talked through on a chat platform. Known before the platform's thread exists, so that no crash in between loses or doubles it.</summary>
/// <param name="Place">The place of the case: chosen from the event that opened it, so that the event coming twice opens one room.</param>
/// <param name="Member">Whose case it is.</param>
/// <param name="Channel">The channel in which the thread hangs.</param>
/// <param name="Thread">The thread; null until it is made.</param>
/// <param name="OwnThread">True when the thread was, or is to be, made by us: then we may name it and put it away.</param>
/// <param name="Source">The message on which the thread hangs; null when it hangs on none.</param>
/// <param name="Private">Seen by the member, by ShedBot and by moderators only.</param>
/// <param name="Name">The name that the thread was given; empty before.</param>
/// <param name="Panel">The message that shows the open question; null when none does.</param>
/// <param name="Helpers">Who may answer besides the member.</param>
/// <param name="Hinted">True once the member was told which words can be read here.</param>
/// <param name="LastHeard">The newest message here that was dealt with, for catching up after a pause; null when none was.</param>
/// <param name="Version">Grows by one with each save; a save expects the version it read.</param>
public sealed record Room(
    string Place,
    ClubId Club,
    MemberId Member,
    string Channel,
    string? Thread,
    bool OwnThread,
    string? Source,
    bool Private,
    string Name,
    string? Panel,
    ImmutableArray<MemberId> Helpers,
    bool Hinted,
    string? LastHeard,
    RoomState State,
    DateTimeOffset OpenedAt,
    int Version)
{
    /// <summary>Whether these hands may answer for the member.</summary>
    public bool MayAnswer(MemberId who) => who == Member || Helpers.Contains(who);
}
