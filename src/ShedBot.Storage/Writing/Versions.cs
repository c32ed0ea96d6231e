using LiteDB;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Holds a document that is to be saved against the one that is stored.</summary>
internal static class Versions
{
    private const string Field = CaseDocument.Version;

    /// <exception cref="StoredDocumentException">The stored document is not what was written.</exception>
    public static BsonDocument? Find(ILiteCollection<BsonDocument> collection, BsonValue id)
    {
        var found = collection.FindById(id);
        if (found is not null)
        {
            Seal.Check(collection.Name, found);
        }

        return found;
    }

    /// <exception cref="StaleSaveException">The new document is not the very next version of the stored one.</exception>
    public static void ThrowIfStale(BsonDocument? stored, BsonDocument next, string what)
    {
        var found = stored is null ? 0 : stored[Field].AsInt32;
        if (found != next[Field].AsInt32 - 1)
        {
            throw new StaleSaveException(what);
        }
    }
}
