using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Reading;

/// <summary>
/// What can be looked up. Two-sided ranges are written BETWEEN: of a pair of comparisons LiteDB 5.0.21 uses one only and walks the rest.
/// </summary>
internal static class Lookups
{
    public static Case? Case(ILiteDatabase db, CaseId id) =>
        db.GetCollection(CaseDocument.Collection).FindById(id.Value) is { } found ? CaseDocument.FromBson(found) : null;

    public static Case? OpenCase(ILiteDatabase db, MemberId member, string place) =>
        OpenCaseQuery(db, member, place)
            .ToList()
            .Select(CaseDocument.FromBson)
            .OrderByDescending(c => c.LastTurnAt)
            .ThenByDescending(c => c.Id.Value, StringComparer.Ordinal)
            .FirstOrDefault();

    public static Case? LastCase(ILiteDatabase db, MemberId member, string place) =>
        LastCaseQuery(db, member, place).Limit(1).ToList() is [var last] ? CaseDocument.FromBson(last) : null;

    public static ImmutableArray<Case> CasesOf(ILiteDatabase db, MemberId member, int limit) =>
        [.. CasesOfQuery(db, member).Limit(limit).ToList().Select(CaseDocument.FromBson)];

    public static BikeProfile? Bike(ILiteDatabase db, BikeId id) =>
        db.GetCollection(BikeDocument.Collection).FindById(id.Value) is { } found ? BikeDocument.FromBson(found) : null;

    public static ImmutableArray<BikeProfile> BikesOf(ILiteDatabase db, MemberId member) =>
        [.. BikesOfQuery(db, member).ToList().Select(BikeDocument.FromBson).OrderBy(b => b.Id.Value, StringComparer.Ordinal)];

    public static ImmutableArray<OutboxMessage> Unsaid(ILiteDatabase db, string place, int limit) =>
        [.. UnsaidQuery(db, place).Limit(limit).ToList().Select(OutboxDocument.FromBson)];

    public static ImmutableArray<Outcome> Outcomes(ILiteDatabase db, int limit) =>
        [.. OutcomesQuery(db).Limit(limit).ToList().Select(OutcomeDocument.FromBson)];

    public static ILiteQueryable<BsonDocument> OpenCaseQuery(ILiteDatabase db, MemberId member, string place) =>
        Query(db, CaseDocument.Collection).Where(Same(CaseDocument.ByOpenPlace), CaseDocument.PlaceOf(member, place));

    public static ILiteQueryable<BsonDocument> LastCaseQuery(ILiteDatabase db, MemberId member, string place) =>
        Query(db, CaseDocument.Collection)
            .Where(Within(CaseDocument.ByPlace), Keys.First(CaseDocument.PlaceOf(member, place)), Keys.Last(CaseDocument.PlaceOf(member, place)))
            .OrderByDescending(Shelf.PathOf(CaseDocument.ByPlace));

    public static ILiteQueryable<BsonDocument> CasesOfQuery(ILiteDatabase db, MemberId member) =>
        Query(db, CaseDocument.Collection)
            .Where(Within(CaseDocument.ByMember), Keys.First(member.Value), Keys.Last(member.Value))
            .OrderByDescending(Shelf.PathOf(CaseDocument.ByMember));

    public static ILiteQueryable<BsonDocument> BikesOfQuery(ILiteDatabase db, MemberId member) =>
        Query(db, BikeDocument.Collection).Where(Same(BikeDocument.ByOwner), member.Value);

    public static ILiteQueryable<BsonDocument> UnsaidQuery(ILiteDatabase db, string place) =>
        Query(db, OutboxDocument.Collection)
            .Where(Within(OutboxDocument.ByPlace), Keys.First(place), Keys.Last(place))
            .OrderBy(Shelf.PathOf(OutboxDocument.ByPlace));

    public static ILiteQueryable<BsonDocument> OutcomesQuery(ILiteDatabase db) =>
        Query(db, OutcomeDocument.Collection).OrderBy(Shelf.PathOf(OutcomeDocument.ByTime));

    public static ILiteQueryable<BsonDocument> Query(ILiteDatabase db, string collection) => db.GetCollection(collection).Query();

    public static string Same(string index) => Shelf.PathOf(index) + " = @0";

    public static string Within(string index) => Shelf.PathOf(index) + " BETWEEN @0 AND @1";
}
