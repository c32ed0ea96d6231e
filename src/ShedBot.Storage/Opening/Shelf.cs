using System.Collections.Immutable;
using LiteDB;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Opening;

/// <summary>One collection: what it is looked up by, and how a document of it is read.</summary>
/// <param name="Read">Reads a document whole, and throws <see cref="StoredDocumentException"/> where it cannot.</param>
internal sealed record Shelf(string Collection, ImmutableArray<string> Indexes, Action<BsonDocument> Read)
{
    public static ImmutableArray<Shelf> All { get; } =
    [
        new(About.Collection, [], d => About.Read(d)),
        new(CaseDocument.Collection, [CaseDocument.ByMember, CaseDocument.ByOpenPlace, CaseDocument.ByPlace, CaseDocument.ByClosed], d => CaseDocument.FromBson(d)),
        new(BikeDocument.Collection, [BikeDocument.ByOwner], d => BikeDocument.FromBson(d)),
        new(OutcomeDocument.Collection, [OutcomeDocument.ByTime], d => OutcomeDocument.FromBson(d)),
        new(OutboxDocument.Collection, [OutboxDocument.ByPlace], d => OutboxDocument.FromBson(d)),
        new(ClubDocument.Collection, [], d => ClubDocument.FromBson(d)),
        new(RoomDocument.Collection, [RoomDocument.ByThread, RoomDocument.ByMember, RoomDocument.ByOpening], d => RoomDocument.FromBson(d)),
        new(ArrivalDocument.Collection, [], d => ArrivalDocument.FromBson(d)),
        new(RiderDocument.Collection, [RiderDocument.ByLook], d => RiderDocument.FromBson(d)),
        new(EditionDocument.Collection, [], d => EditionDocument.FromBson(d, "", "")),
        new(LayerDocument.Collection, [], d => LayerDocument.FromBson(d)),
        new(ProposalDocument.Collection, [ProposalDocument.ByState], d => ProposalDocument.FromBson(d)),
        new(TipDocument.Collection, [TipDocument.ByState], d => TipDocument.FromBson(d)),
        new(TeachingSettingsDocument.Collection, [], d => TeachingSettingsDocument.FromBson(d)),
        new(LearningBookDocument.Collection, [], d => LearningBookDocument.FromBson(d)),
        new(AuditDocument.Collection, [], d => AuditDocument.FromBson(d)),
        new(UnheardDocument.Collection, [], d => UnheardDocument.FromBson(d)),
    ];

    public static string PathOf(string index) => "$." + index;

    public static void EnsureIndexes(ILiteDatabase db)
    {
        foreach (var shelf in All)
        {
            foreach (var index in shelf.Indexes)
            {
                db.GetCollection(shelf.Collection).EnsureIndex(index, BsonExpression.Create(PathOf(index)));
            }
        }
    }
}
