using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Opening;

/// <summary>The one document that says whose file this is and how it is laid out.</summary>
internal static class About
{
    public const string Collection = "about";
    private const string Id = "shed";
    private const string Schema = "schema";

    /// <returns>The schema version, or null when the file is not one of ours.</returns>
    public static int? Find(ILiteDatabase db) => db.GetCollection(Collection).FindById(Id) is { } document ? Read(document) : null;

    public static int Read(BsonDocument document) => Fields.Of(Collection, document).Whole(Schema);

    public static void Write(ILiteDatabase db, int schema) =>
        db.GetCollection(Collection).Upsert(Seal.Close(new BsonDocument { ["_id"] = Id, [Schema] = schema }));
}
