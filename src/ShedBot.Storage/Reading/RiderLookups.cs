using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Reading;

/// <summary>What can be looked up of riders; written as <see cref="Lookups"/> are.</summary>
internal static class RiderLookups
{
    public static Rider? Rider(ILiteDatabase db, MemberId member) =>
        db.GetCollection(RiderDocument.Collection).FindById(member.Value) is { } found ? RiderDocument.FromBson(found) : null;

    public static ImmutableArray<Rider> Due(ILiteDatabase db, DateTimeOffset now, int limit) =>
        [.. DueQuery(db, now).Limit(limit).ToList().Select(RiderDocument.FromBson)];

    /// <summary>From the first digit on: null, for whoever is not to be looked at, lies outside.</summary>
    public static ILiteQueryable<BsonDocument> DueQuery(ILiteDatabase db, DateTimeOffset now) =>
        Lookups.Query(db, RiderDocument.Collection)
            .Where(Lookups.Within(RiderDocument.ByLook), "0", Times.Key(now))
            .OrderBy(Shelf.PathOf(RiderDocument.ByLook));

    public static ILiteQueryable<BsonDocument> OfClubQuery(ILiteDatabase db, ClubId club) =>
        ClubLookups.OfMembersQuery(db, RiderDocument.Collection, "_id", club);
}
