using System.Collections.Immutable;
using LiteDB;
using ShedBot.Storage.Checking;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Opening;

/// <summary>How the documents are laid out, and the steps that bring an older file up to it.</summary>
/// <param name="Steps">In order; the first brings version 1 to 2.</param>
internal sealed record StoreSchema(ImmutableArray<SchemaStep> Steps)
{
    /// <summary>Of this program. To change the layout, append a step; never change one that was released.</summary>
    public static StoreSchema Ours { get; } = new([RoomsStep.ToTwo, RidingStep.ToThree, RidersStep.ToFour, OwnSettingsStep.ToFive, TeachingStep.ToSix, LearningStep.ToSeven]);

    public int Current => Steps.Length + 1;

    /// <summary>Takes every step that is still to be taken, in one transaction: the file is at the new version as a whole, or as it was.</summary>
    public void Upgrade(ILiteDatabase db, int from)
    {
        db.BeginTrans();
        try
        {
            foreach (var step in Steps.Skip(from - 1))
            {
                foreach (var shelf in Shelf.All.Where(s => s.Collection != About.Collection))
                {
                    Rewrite(db.GetCollection(shelf.Collection), document => step.Change(shelf.Collection, document));
                }
            }

            About.Write(db, Current);
            if (IntegrityWalk.Take(db).Problems is [var problem, ..])
            {
                throw new InvalidDataException(problem);
            }

            if (!db.Commit())
            {
                throw new InvalidOperationException("The upgrade could not be committed.");
            }
        }
        catch
        {
            db.Rollback();
            throw;
        }
    }

    // Ids first: a collection must not be changed while it is walked.
    private static void Rewrite(ILiteCollection<BsonDocument> documents, Func<BsonDocument, BsonDocument> change)
    {
        foreach (var id in documents.Query().Select("$._id").ToList().Select(d => d["_id"]).ToList())
        {
            var before = documents.FindById(id);
            Seal.Check(documents.Name, before);
            documents.Update(id, Seal.Close(change(before)));
        }
    }
}

/// <summary>One change of the layout, on documents as they are stored.</summary>
/// <param name="What">What changes, for the log.</param>
/// <param name="Change">Collection name and document to the document after; returns the document as it is where nothing changes.</param>
internal sealed record SchemaStep(string What, Func<string, BsonDocument, BsonDocument> Change);
