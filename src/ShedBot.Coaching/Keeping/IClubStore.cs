using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Keeping;

/// <summary>Where clubs and the rooms of their cases are kept, beside the cases. Everything acknowledged survives the death of the process.</summary>
public interface IClubStore
{
    Task<Club?> FindClubAsync(ClubId id, CancellationToken ct);

    /// <summary>All clubs, by id.</summary>
    Task<ImmutableArray<Club>> ClubsAsync(CancellationToken ct);

    /// <param name="club">The club after; its version is one above the version that was read.</param>
    /// <exception cref="StaleSaveException">Somebody saved the club since it was read; nothing was changed.</exception>
    Task SaveClubAsync(Club club, CancellationToken ct);

    Task<Room?> FindRoomAsync(string place, CancellationToken ct);

    Task<Room?> FindRoomByThreadAsync(string thread, CancellationToken ct);

    /// <summary>The member's rooms, last opened first.</summary>
    /// <param name="limit">1 to 100.</param>
    Task<ImmutableArray<Room>> RoomsOfAsync(MemberId member, int limit, CancellationToken ct);

    /// <summary>All rooms that are open, in all clubs, oldest first.</summary>
    Task<ImmutableArray<Room>> OpenRoomsAsync(CancellationToken ct);

    /// <summary>Keeps the room and marks as said what was said in it, as a whole or not at all.</summary>
    /// <param name="room">The room after; its version is one above the version that was read. Its member and helpers are members of its club.</param>
    /// <param name="said">Ids of outbox messages; those that are not there were marked before.</param>
    /// <exception cref="StaleSaveException">Somebody saved the room since it was read; nothing was changed.</exception>
    Task SaveRoomAsync(Room room, ImmutableArray<string> said, CancellationToken ct);

    /// <summary>The places in which something was decided to be said and is not yet marked as said; oldest first, none twice.</summary>
    /// <param name="limit">1 to 10,000.</param>
    Task<ImmutableArray<string>> UnsaidPlacesAsync(int limit, CancellationToken ct);

    /// <summary>
    /// Removes all that is kept of a member, in one transaction: cases, bikes, outcomes, rooms, wishes about reminders, what is still to be said, their leave
    /// to answer for others, their tips, their words that were not understood, and their proposals that were not published. What of theirs was published
    /// stays with the club's rules, without their id and without their name where it stands as a credit.
    /// </summary>
    Task<Forgotten> ForgetMemberAsync(MemberId member, CancellationToken ct);

    /// <summary>Removes all that is kept of a club and of its members, in one transaction.</summary>
    Task<Forgotten> ForgetClubAsync(ClubId club, CancellationToken ct);
}

/// <summary>How much was removed.</summary>
public sealed record Forgotten(int Cases, int Bikes, int Rooms);
