using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage;

/// <content>Clubs and rooms, beside the cases in the same file.</content>
public sealed partial class LiteShedStore
{
    public Task<Club?> FindClubAsync(ClubId id, CancellationToken ct) => readers.ReadAsync(d => ClubLookups.Club(d, id), ct);

    public Task<ImmutableArray<Club>> ClubsAsync(CancellationToken ct) => readers.ReadAsync(ClubLookups.Clubs, ct);

    public Task SaveClubAsync(Club club, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(club.Version, 1, "club version");
        var document = ClubDocument.ToBson(club);
        return writer.DoAsync(d => ClubWriter.WriteClub(d, document), alone: false, ct);
    }

    public Task<Room?> FindRoomAsync(string place, CancellationToken ct) => readers.ReadAsync(d => ClubLookups.Room(d, place), ct);

    public Task<Room?> FindRoomByThreadAsync(string thread, CancellationToken ct) =>
        readers.ReadAsync(d => ClubLookups.RoomByThread(d, thread), ct);

    public Task<ImmutableArray<Room>> RoomsOfAsync(MemberId member, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => ClubLookups.RoomsOf(d, member, limit), ct);
    }

    public Task<ImmutableArray<Room>> OpenRoomsAsync(CancellationToken ct) => readers.ReadAsync(ClubLookups.OpenRooms, ct);

    public Task SaveRoomAsync(Room room, ImmutableArray<string> said, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(room.Version, 1, "room version");
        var document = RoomDocument.ToBson(room);
        return writer.DoAsync(d => ClubWriter.WriteRoom(d, document, said), alone: false, ct);
    }

    public Task<ImmutableArray<string>> UnsaidPlacesAsync(int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 10_000);
        return readers.ReadAsync(d => ClubLookups.UnsaidPlaces(d, limit), ct);
    }

    /// <inheritdoc/>
    /// <remarks>Freed room in the file is cleared and used again, and the log that still holds what was removed is put away right after, or, while a
    /// reader is inside, a little later; then it stands in neither. What is beyond the two keeps what it had: backups, exports, the copy that an upgrade
    /// left beside the file, and whatever the disk remembers below it.</remarks>
    public Task<Forgotten> ForgetMemberAsync(MemberId member, CancellationToken ct)
    {
        Keys.Checked(member.Value, "member id");
        return ForgetAsync(d => Forgetting.Member(d, member), ct);
    }

    /// <inheritdoc cref="ForgetMemberAsync"/>
    public Task<Forgotten> ForgetClubAsync(ClubId club, CancellationToken ct)
    {
        ClubDocument.Checked(club);
        return ForgetAsync(d => Forgetting.Club(d, club), ct);
    }

    private async Task<Forgotten> ForgetAsync(Func<LiteDB.ILiteDatabase, Forgotten> forget, CancellationToken ct)
    {
        var forgotten = new Forgotten(0, 0, 0);
        await writer.RemoveAsync(d => forgotten = forget(d), ct);
        return forgotten;
    }
}
