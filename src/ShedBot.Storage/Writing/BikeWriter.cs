using LiteDB;
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

    public static void ThrowIfStale(ILiteDatabase db, BsonDocument bike) =>
        Versions.ThrowIfStale(Versions.Find(db.GetCollection(BikeDocument.Collection), bike["_id"]), bike, $"Bike '{bike["_id"].AsString}'");
}
