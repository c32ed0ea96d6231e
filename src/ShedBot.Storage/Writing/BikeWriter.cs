using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Writes a bike by itself, inside the transaction it is called in.</summary>
internal static class BikeWriter
{
    public static void Write(ILiteDatabase db, BsonDocument bike)
    {
        var bikes = db.GetCollection(BikeDocument.Collection);
        Versions.ThrowIfStale(Versions.Find(bikes, bike["_id"]), bike, $"Bike '{bike["_id"].AsString}'");
        bikes.Upsert(bike);
    }
}
