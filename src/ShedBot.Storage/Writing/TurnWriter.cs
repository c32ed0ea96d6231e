using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Writes a turn, or a rider with what is said to them, inside the transaction it is called in. Looks at everything first and writes then.</summary>
internal sealed class TurnWriter(OutboxWriter outbox)
{
    public void Write(LiteDatabase db, TurnDocuments turn)
    {
        var cases = db.GetCollection(CaseDocument.Collection);
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

        OutboxWriter.ThrowIfTaken(db, turn.Say);
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

        if (turn.Turn.Unheard is { } unheard)
        {
            UnheardWriter.Add(db, unheard);
        }

        outbox.Write(db, turn.Say);
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

        // The message of a day has one name: where one of that name waits, this one takes its place and is not a second one.
        outbox.Write(db, next.Say);
    }

    private static void ThrowIfRiderStale(LiteDatabase db, BsonDocument rider) =>
        Versions.ThrowIfStale(Versions.Find(db.GetCollection(RiderDocument.Collection), rider["_id"]), rider, RiderNamed(rider));

    private static string RiderNamed(BsonDocument rider) => $"Rider '{rider["_id"].AsString}'";
}
