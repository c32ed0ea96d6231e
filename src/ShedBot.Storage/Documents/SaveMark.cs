using System.Collections.Immutable;
using System.IO.Hashing;
using LiteDB;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>
/// Tells which save a document was last written by: a hash of all that the save holds but its times, as those differ when one act is done twice. Two
/// moderators who do the same to the same proposal make different saves, because the audit says who it was.
/// </summary>
internal static class SaveMark
{
    public const string Field = "mark";

    private static readonly ImmutableHashSet<string> Times = ["at", "begunAt", "changedAt", "decidedAt", ProposalDocument.ByState, "crc"];

    /// <summary>Marks the documents of a save and closes them.</summary>
    public static void Put(ImmutableArray<BsonDocument> documents, IEnumerable<BsonDocument> others, IEnumerable<AuditEntry> audit)
    {
        var hash = new XxHash128();
        foreach (var document in documents.Concat(others).Concat(audit.Select(AuditDocument.ToBson)))
        {
            hash.Append(BsonSerializer.Serialize(Bare(document).AsDocument));
        }

        var mark = Convert.ToHexString(hash.GetCurrentHash());
        foreach (var document in documents)
        {
            document[Field] = mark;
            Seal.Close(document);
        }
    }

    private static BsonValue Bare(BsonValue value) => value switch
    {
        { IsArray: true } => new BsonArray(value.AsArray.Select(Bare)),
        { IsDocument: true } => new BsonDocument(value.AsDocument.GetElements().Where(e => !Times.Contains(e.Key)).ToDictionary(e => e.Key, e => Bare(e.Value))),
        _ => value,
    };
}
