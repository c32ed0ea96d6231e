using System.Collections.Immutable;
using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Writes clubs and rooms inside the transaction it is called in.</summary>
internal static class ClubWriter
{
    public static void WriteClub(ILiteDatabase db, BsonDocument club) => WriteNext(db.GetCollection(ClubDocument.Collection), club, "Club");

    public static void WriteRoom(ILiteDatabase db, BsonDocument room, ImmutableArray<string> said)
    {
        WriteNext(db.GetCollection(RoomDocument.Collection), room, "Room");
        foreach (var id in said)
        {
            db.GetCollection(OutboxDocument.Collection).Delete(id);
        }
    }

    private static void WriteNext(ILiteCollection<BsonDocument> collection, BsonDocument next, string kind)
    {
        var id = next["_id"];
        Versions.ThrowIfStale(Versions.Find(collection, id), next, $"{kind} '{id.AsString}'");
        collection.Upsert(next);
    }
}
