using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Writes a bike by itself, inside the transaction it is called in.</summary>
internal static class BikeWriter
{
    public static void Write(ILiteDatabase db, BsonDocument bike)
    {
        ThrowIfStale(db, bike);
        db.GetCollection(BikeDocument.Collection).Upsert(bike);
    }

    /// <exception cref="StaleSaveException">It is gone, or was saved since it was read.</exception>
    public static void Remove(ILiteDatabase db, BikeProfile bike)
    {
        var bikes = db.GetCollection(BikeDocument.Collection);
        var stored = Versions.Find(bikes, bike.Id.Value);
        if (stored is null || stored[BikeDocument.Version].AsInt32 != bike.Version)
        {
            throw new StaleSaveException($"Bike '{bike.Id}'");
        }

        bikes.Delete(bike.Id.Value);
    }

    public static void ThrowIfStale(ILiteDatabase db, BsonDocument bike) =>
        Versions.ThrowIfStale(Versions.Find(db.GetCollection(BikeDocument.Collection), bike["_id"]), bike, $"Bike '{bike["_id"].AsString}'");
}
