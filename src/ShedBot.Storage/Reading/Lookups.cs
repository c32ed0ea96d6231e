using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Reading;

/// <summary>
/// What can be looked up. Two-sided ranges are written BETWEEN: of a pair of comparisons LiteDB 5.0.21 uses one only and walks the rest.
/// </summary>
internal static class Lookups
{
    public static Case? Case(ILiteDatabase db, CaseId id) =>
        db.GetCollection(CaseDocument.Collection).FindById(id.Value) is { } found ? CaseDocument.FromBson(found) : null;

    public static Case? OpenCase(ILiteDatabase db, MemberId member, string place) =>
        Query(db, CaseDocument.Collection)
            .Where(Same(CaseDocument.ByOpenPlace), CaseDocument.OpenPlace(member, place))
            .ToList()
            .Select(CaseDocument.FromBson)
            .OrderByDescending(c => c.LastTurnAt)
            .ThenByDescending(c => c.Id.Value, StringComparer.Ordinal)
            .FirstOrDefault();

    public static ImmutableArray<Case> CasesOf(ILiteDatabase db, MemberId member, int limit) =>
        [.. Query(db, CaseDocument.Collection)
            .Where(Within(CaseDocument.ByMember), Keys.First(member.Value), Keys.Last(member.Value))
            .OrderByDescending(Field(CaseDocument.ByMember))
            .Limit(limit)
            .ToList()
            .Select(CaseDocument.FromBson)];

    public static BikeProfile? Bike(ILiteDatabase db, BikeId id) =>
        db.GetCollection(BikeDocument.Collection).FindById(id.Value) is { } found ? BikeDocument.FromBson(found) : null;

    public static ImmutableArray<BikeProfile> BikesOf(ILiteDatabase db, MemberId member) =>
        [.. Query(db, BikeDocument.Collection)
            .Where(Same(BikeDocument.ByOwner), member.Value)
            .ToList()
            .Select(BikeDocument.FromBson)
            .OrderBy(b => b.Id.Value, StringComparer.Ordinal)];

    public static ImmutableArray<OutboxMessage> Unsaid(ILiteDatabase db, string place, int limit) =>
        [.. Query(db, OutboxDocument.Collection)
            .Where(Within(OutboxDocument.ByPlace), Keys.First(place), Keys.Last(place))
            .OrderBy(Field(OutboxDocument.ByPlace))
            .Limit(limit)
            .ToList()
            .Select(OutboxDocument.FromBson)];

    public static ImmutableArray<Outcome> Outcomes(ILiteDatabase db, int limit) =>
        [.. Query(db, OutcomeDocument.Collection)
            .OrderBy(Field(OutcomeDocument.ByTime))
            .Limit(limit)
            .ToList()
            .Select(OutcomeDocument.FromBson)];

    internal static ILiteQueryable<BsonDocument> Query(ILiteDatabase db, string collection) => db.GetCollection(collection).Query();

    private static string Field(string name) => "$." + name;

    private static string Same(string name) => Field(name) + " = @0";

    private static string Within(string name) => Field(name) + " BETWEEN @0 AND @1";
}
