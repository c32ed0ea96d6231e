using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Writes a turn, or a rider with what is said to them, inside the transaction it is called in. Looks at everything first and writes then.</summary>
internal sealed class TurnWriter
{
    private long lastNumber;

    /// <param name="lastNumber">The highest number in the outbox, 0 when it is empty.</param>
    public TurnWriter(long lastNumber) => this.lastNumber = lastNumber;

    public static long LastNumberIn(ILiteDatabase db) =>
        db.GetCollection(OutboxDocument.Collection).Query().OrderByDescending(OutboxDocument.Number).Limit(1).ToList() is [var last]
            ? last[OutboxDocument.Number].AsInt64
            : 0;

    public void Write(LiteDatabase db, TurnDocuments turn)
    {
        var cases = db.GetCollection(CaseDocument.Collection);
        var outbox = db.GetCollection(OutboxDocument.Collection);

        var stored = Versions.Find(cases, turn.Case["_id"]);
        // Lost acknowledgement: the caller saves the same turn again. What it says may have been said since, and must not come back.
        if (stored is not null && SameTurn.Is(stored, turn.Case))
        {
            return;
        }

        Versions.ThrowIfStale(stored, turn.Case, $"Case '{turn.Turn.Case.Id}'");
        if (turn.Bike is { } bike)
        {
            BikeWriter.ThrowIfStale(db, bike);
        }

        if (turn.Owner is { } owner)
        {
            ThrowIfRiderStale(db, owner);
        }

        if (turn.SayIds.FirstOrDefault(id => outbox.FindById(id) is not null) is { } taken)
        {
            throw new InvalidOperationException($"Message '{taken}' is already waiting to be said, for another turn.");
        }

        cases.Upsert(turn.Case);
        if (turn.Bike is not null)
        {
            db.GetCollection(BikeDocument.Collection).Upsert(turn.Bike);
        }

        if (turn.Owner is not null)
        {
            db.GetCollection(RiderDocument.Collection).Upsert(turn.Owner);
        }

        if (turn.Outcome is not null)
        {
            db.GetCollection(OutcomeDocument.Collection).Upsert(turn.Outcome);
        }

        foreach (var (message, card) in turn.Turn.Say.Zip(turn.CardTexts))
        {
            outbox.Insert(OutboxDocument.ToBson(message, card, ++lastNumber));
        }
    }

    public void WriteRider(LiteDatabase db, RiderDocuments next)
    {
        var riders = db.GetCollection(RiderDocument.Collection);
        var stored = Versions.Find(riders, next.Rider["_id"]);
        // As for a turn: what this very save says may have been said since.
        if (stored is not null && Seal.IsSame(stored, next.Rider))
        {
            return;
        }

        Versions.ThrowIfStale(stored, next.Rider, RiderNamed(next.Rider));
        foreach (var bike in next.Bikes)
        {
            BikeWriter.ThrowIfStale(db, bike);
        }

        riders.Upsert(next.Rider);
        foreach (var bike in next.Bikes)
        {
            db.GetCollection(BikeDocument.Collection).Upsert(bike);
        }

        var outbox = db.GetCollection(OutboxDocument.Collection);
        foreach (var (message, card) in next.Say.Zip(next.CardTexts))
        {
            // The message of a day has one name: where one of that name waits, this one takes its place and is not a second one.
            outbox.Upsert(OutboxDocument.ToBson(message, card, ++lastNumber));
        }
    }

    private static void ThrowIfRiderStale(LiteDatabase db, BsonDocument rider) =>
        Versions.ThrowIfStale(Versions.Find(db.GetCollection(RiderDocument.Collection), rider["_id"]), rider, RiderNamed(rider));

    private static string RiderNamed(BsonDocument rider) => $"Rider '{rider["_id"].AsString}'";
}
