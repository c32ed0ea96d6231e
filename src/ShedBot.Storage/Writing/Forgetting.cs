using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>Removes what is kept of somebody, inside the transaction it is called in.</summary>
internal static class Forgetting
{
    public static Forgotten Member(ILiteDatabase db, MemberId member)
    {
        var counted = Lookups.CasesOfQuery(db, member).ToList().Exists(c => !c[CaseDocument.ByClosed].IsNull);
        var removed = Remove(
            db, Ids(Lookups.CasesOfQuery(db, member)), Ids(Lookups.BikesOfQuery(db, member)), Ids(ClubLookups.RoomsOfQuery(db, member)), [member.Value], m => m == member);
        if (ClubId.Of(member) is { } club)
        {
            TakeLeave(db, club, member);
        }

        RemoveArrivals(db, member.Value.Equals);
        TeachingForgetting.Member(db, member);
        if (counted)
        {
            LearningForgetting.Note(db, ClubId.Serving(member));
        }

        return removed;
    }

    public static Forgotten Club(ILiteDatabase db, ClubId club)
    {
        // An owner stands alone in its key, so the one text right above the club's could be met.
        var own = ClubDocument.FirstOf(club);
        var bikes = ClubLookups.OfMembersQuery(db, BikeDocument.Collection, BikeDocument.ByOwner, club).ToList()
            .Where(b => b[BikeDocument.ByOwner].AsString.StartsWith(own, StringComparison.Ordinal)).Select(b => b["_id"]).ToList();
        var removed = Remove(
            db,
            Ids(ClubLookups.OfMembersQuery(db, CaseDocument.Collection, CaseDocument.ByMember, club)),
            bikes,
            Ids(ClubLookups.OfMembersQuery(db, RoomDocument.Collection, RoomDocument.ByMember, club)),
            // A member stands alone in the key too.
            [.. Ids(RiderLookups.OfClubQuery(db, club)).Where(r => r.AsString.StartsWith(own, StringComparison.Ordinal))],
            m => ClubId.Serving(m) == club);
        RemoveArrivals(db, m => m.StartsWith(own, StringComparison.Ordinal));
        TeachingForgetting.Club(db, club);
        db.GetCollection(ClubDocument.Collection).Delete(club.Value);
        return removed;
    }

    // What waits to be said is looked through whole: it is what the platform did not take yet, so there is little of it.
    private static Forgotten Remove(ILiteDatabase db, List<BsonValue> cases, List<BsonValue> bikes, List<BsonValue> rooms, List<BsonValue> riders, Predicate<MemberId> whose)
    {
        var (ofCases, inRooms) = (cases.ToHashSet(), rooms.ToHashSet());
        inRooms.UnionWith(riders.Select(r => new BsonValue(Decision.PlaceOf(new MemberId(r.AsString)))));
        var unsaid = Lookups.Query(db, OutboxDocument.Collection).ToEnumerable()
            .Where(m => ofCases.Contains(m[OutboxDocument.Case]) || inRooms.Contains(m[OutboxDocument.Place])
                || (TeachingPlace.MemberIn(m[OutboxDocument.Place].AsString) is { } told && whose(told)))
            .Select(m => m["_id"]).ToList();
        Delete(db, OutboxDocument.Collection, unsaid);
        Delete(db, OutcomeDocument.Collection, cases);
        Delete(db, RiderDocument.Collection, riders);
        return new Forgotten(
            Delete(db, CaseDocument.Collection, cases), Delete(db, BikeDocument.Collection, bikes), Delete(db, RoomDocument.Collection, rooms));
    }

    // Looked through whole: each is gone within seconds, unless the process died.
    private static void RemoveArrivals(ILiteDatabase db, Predicate<string> ofMember) => Delete(
        db,
        ArrivalDocument.Collection,
        [.. Lookups.Query(db, ArrivalDocument.Collection).ToList().Where(a => ofMember(a[ArrivalDocument.Member].AsString)).Select(a => a["_id"])]);

    /// <summary>The version grows, so that nobody who read the room before brings the leave back.</summary>
    private static void TakeLeave(ILiteDatabase db, ClubId club, MemberId member)
    {
        var rooms = db.GetCollection(RoomDocument.Collection);
        foreach (var document in ClubLookups.OfMembersQuery(db, RoomDocument.Collection, RoomDocument.ByMember, club).ToList())
        {
            var room = RoomDocument.FromBson(document);
            if (room.Helpers.Contains(member))
            {
                rooms.Update(RoomDocument.ToBson(room with { Helpers = room.Helpers.RemoveAll(h => h == member), Version = room.Version + 1 }));
            }
        }
    }

    private static int Delete(ILiteDatabase db, string collection, List<BsonValue> ids) => ids.Count(id => db.GetCollection(collection).Delete(id));

    // Ids first: a collection must not be changed while it is walked.
    private static List<BsonValue> Ids(ILiteQueryable<BsonDocument> query) => [.. query.ToList().Select(d => d["_id"])];
}
