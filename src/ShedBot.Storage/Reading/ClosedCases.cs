using System.Collections.Immutable;
using System.IO.Hashing;
using System.Text;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Reading;

/// <summary>A club's cases that are closed at this moment, each with how it ended.</summary>
internal static class ClosedCases
{
    /// <summary>Each is read and let go before the next: there may be many thousands.</summary>
    public static ImmutableArray<ClosedCase> Of(ILiteDatabase db, ClubId club, int limit)
    {
        var cases = Query(db, club).Limit(limit).ToEnumerable().Select(CaseDocument.FromBson).ToList();
        var outcomes = db.GetCollection(OutcomeDocument.Collection);
        var bikes = new Dictionary<BikeId, BikeProfile?>();
        var closed = ImmutableArray.CreateBuilder<ClosedCase>(cases.Count);
        foreach (var c in cases)
        {
            // Of a case that was closed twice the last outcome stands. One that was opened again, or forgotten, just now has none that fits.
            if (outcomes.FindById(c.Id.Value) is not { } found || OutcomeDocument.FromBson(found) is not { } outcome || outcome.Phase != c.Phase)
            {
                continue;
            }

            if (!bikes.TryGetValue(c.Bike, out var bike))
            {
                bikes[c.Bike] = bike = Lookups.Bike(db, c.Bike);
            }

            closed.Add(new ClosedCase(c, bike, outcome));
        }

        return closed.ToImmutable();
    }

    /// <summary>Read off the index: no case is loaded.</summary>
    public static ClosedMark Mark(ILiteDatabase db, ClubId club, DateTimeOffset until)
    {
        var (count, hash) = (0, new XxHash64());
        foreach (var key in KeysQuery(db, club, until).ToEnumerable())
        {
            count++;
            hash.Append(Encoding.UTF8.GetBytes(key.GetElements().First().Value.AsString));
            hash.Append([0]);
        }

        return new ClosedMark(count, $"{count}-{Convert.ToHexStringLower(hash.GetCurrentHash())}");
    }

    public static ILiteQueryableResult<BsonDocument> KeysQuery(ILiteDatabase db, ClubId club, DateTimeOffset until) =>
        Lookups.Query(db, CaseDocument.Collection)
            // A time alone sorts before the same time with a case behind it.
            .Where(Lookups.Within(CaseDocument.ByClosed), ClubKeys.First(club), Keys.Join(ClubDocument.Checked(club), Times.Key(until.AddMilliseconds(1))))
            .OrderByDescending(Shelf.PathOf(CaseDocument.ByClosed))
            .Select(Shelf.PathOf(CaseDocument.ByClosed));

    public static ILiteQueryable<BsonDocument> Query(ILiteDatabase db, ClubId club) =>
        Lookups.Query(db, CaseDocument.Collection)
            .Where(Lookups.Within(CaseDocument.ByClosed), ClubKeys.First(club), Keys.Last(club.Value))
            .OrderByDescending(Shelf.PathOf(CaseDocument.ByClosed));
}
