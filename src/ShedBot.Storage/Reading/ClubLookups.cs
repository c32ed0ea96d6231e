using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Reading;

/// <summary>What can be looked up of clubs and rooms; written as <see cref="Lookups"/> are.</summary>
internal static class ClubLookups
{
    public static Club? Club(ILiteDatabase db, ClubId id) =>
        db.GetCollection(ClubDocument.Collection).FindById(id.Value) is { } found ? ClubDocument.FromBson(found) : null;

    public static ImmutableArray<Club> Clubs(ILiteDatabase db) =>
        [.. Lookups.Query(db, ClubDocument.Collection).OrderBy("$._id").ToList().Select(ClubDocument.FromBson)];

    public static Room? Room(ILiteDatabase db, string place) =>
        db.GetCollection(RoomDocument.Collection).FindById(place) is { } found ? RoomDocument.FromBson(found) : null;

    public static Room? RoomByThread(ILiteDatabase db, string thread) =>
        RoomByThreadQuery(db, thread).ToList().Select(RoomDocument.FromBson).OrderByDescending(r => r.OpenedAt).FirstOrDefault();

    public static ImmutableArray<Room> RoomsOf(ILiteDatabase db, MemberId member, int limit) =>
        [.. RoomsOfQuery(db, member).Limit(limit).ToList().Select(RoomDocument.FromBson)];

    public static ImmutableArray<Room> OpenRooms(ILiteDatabase db) => [.. OpenRoomsQuery(db).ToList().Select(RoomDocument.FromBson)];

    /// <summary>Read off the keys of the index: the cards, which are most of the outbox, stay where they are.</summary>
    public static ImmutableArray<string> UnsaidPlaces(ILiteDatabase db, int limit) =>
    [
        .. UnsaidKeysQuery(db).ToEnumerable()
            .Select(d => Keys.Parted(d.GetElements().First().Value.AsString))
            .GroupBy(k => k.Text, (place, of) => (Place: place, First: of.First().Digits), StringComparer.Ordinal)
            .OrderBy(p => p.First, StringComparer.Ordinal)
            .Take(limit)
            .Select(p => p.Place),
    ];

    public static ILiteQueryable<BsonDocument> RoomByThreadQuery(ILiteDatabase db, string thread) =>
        Lookups.Query(db, RoomDocument.Collection).Where(Lookups.Same(RoomDocument.ByThread), thread);

    public static ILiteQueryable<BsonDocument> RoomsOfQuery(ILiteDatabase db, MemberId member) =>
        Lookups.Query(db, RoomDocument.Collection)
            .Where(Lookups.Within(RoomDocument.ByMember), Keys.First(member.Value), Keys.Last(member.Value))
            .OrderByDescending(Shelf.PathOf(RoomDocument.ByMember));

    /// <summary>From the first to the last digit: null, for a room that is not open, lies outside.</summary>
    public static ILiteQueryable<BsonDocument> OpenRoomsQuery(ILiteDatabase db) =>
        Lookups.Query(db, RoomDocument.Collection)
            .Where(Lookups.Within(RoomDocument.ByOpening), "0", ":")
            .OrderBy(Shelf.PathOf(RoomDocument.ByOpening));

    public static ILiteQueryableResult<BsonDocument> UnsaidKeysQuery(ILiteDatabase db)
    {
        var path = Shelf.PathOf(OutboxDocument.ByPlace);
        return Lookups.Query(db, OutboxDocument.Collection).OrderBy(path).Select(path);
    }

    /// <summary>All that an index of member ids holds of a club's members.</summary>
    public static ILiteQueryable<BsonDocument> OfMembersQuery(ILiteDatabase db, string collection, string index, ClubId club) =>
        Lookups.Query(db, collection).Where(Lookups.Within(index), ClubDocument.FirstOf(club), ClubDocument.Above(club));
}
