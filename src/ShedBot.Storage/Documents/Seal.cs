using System.IO.Hashing;
using LiteDB;

namespace ShedBot.Storage.Documents;

/// <summary>A check sum (CRC-32, ISO 3309) in each document: the file format has none of its own, so a flipped bit would pass as data.</summary>
internal static class Seal
{
    private const string Field = "crc";

    public static BsonDocument Close(BsonDocument document)
    {
        document.Remove(Field);
        _ = WellFormed.Of(document);
        document[Field] = SumOf(document);
        return document;
    }

    /// <exception cref="StoredDocumentException">The document is not what was written.</exception>
    public static void Check(string collection, BsonDocument document)
    {
        if (!document.TryGetValue(Field, out var written) || !written.IsInt64 || written.AsInt64 != SumOf(document))
        {
            throw new StoredDocumentException(collection, IdOf(document), "its check sum is wrong, so its content was damaged.");
        }
    }

    /// <summary>Whether two sealed documents say the same.</summary>
    public static bool IsSame(BsonDocument one, BsonDocument other) =>
        one[Field] == other[Field] && BsonSerializer.Serialize(one).AsSpan().SequenceEqual(BsonSerializer.Serialize(other));

    /// <summary>The id for a message; a damaged one may be anything.</summary>
    public static string IdOf(BsonDocument document) => document["_id"] is { IsString: true } id ? id.AsString : document["_id"].ToString();

    // The sum is taken over the bytes of all other fields in their order; the fields are copied because taking one out reorders the rest.
    private static long SumOf(BsonDocument document)
    {
        var bare = new BsonDocument();
        foreach (var (name, value) in document.GetElements())
        {
            if (name != Field)
            {
                bare[name] = value;
            }
        }

        return Crc32.HashToUInt32(BsonSerializer.Serialize(bare));
    }
}
