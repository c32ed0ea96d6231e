using LiteDB;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>Writes an act on a club's rules inside the transaction it is called in. Looks at everything first and writes then.</summary>
internal sealed class TeachingWriter(OutboxWriter outbox)
{
    public void Write(ILiteDatabase db, TeachingDocuments act)
    {
        // Lost acknowledgement: the caller saves the same act again. What it says may have been said since, and must not come back.
        if (IsDone(db, act))
        {
            return;
        }

        foreach (var (collection, document, called) in act.Versioned)
        {
            Versions.ThrowIfStale(Versions.Find(db.GetCollection(collection), document["_id"]), document, called);
        }

        if (act.Edition is { Number: var next } && TeachingLookups.NewestEdition(db, act.Club) != next - 1)
        {
            throw new StaleSaveException($"Edition {next} of the club's rules");
        }

        OutboxWriter.ThrowIfTaken(db, act.Say);
        foreach (var (collection, document, _) in act.Versioned)
        {
            db.GetCollection(collection).Upsert(document);
        }

        if (act.Edition is { Head: var head, Texts: var texts })
        {
            db.GetCollection(EditionDocument.Collection).Insert(head);
            db.GetCollection(LayerDocument.Collection).Insert(texts);
        }

        var number = TeachingLookups.NewestNumber(db, AuditDocument.Collection, act.Club);
        foreach (var entry in act.Audit)
        {
            db.GetCollection(AuditDocument.Collection).Insert(AuditDocument.ToBson(entry with { Number = ++number }));
        }

        outbox.Write(db, act.Say);
    }

    /// <summary>Whether this very act is what was saved last. One that leaves nothing but its line of audit is not known again.</summary>
    private static bool IsDone(ILiteDatabase db, TeachingDocuments act)
    {
        var parts = act.Versioned.Select(v => (v.Collection, v.Document)).ToList();
        if (act.Edition is { Head: var head })
        {
            parts.Add((EditionDocument.Collection, head));
        }

        return parts.Count > 0 && parts.TrueForAll(
            p => Versions.Find(db.GetCollection(p.Collection), p.Document["_id"]) is { } stored && stored[SaveMark.Field].AsString == p.Document[SaveMark.Field].AsString);
    }
}
