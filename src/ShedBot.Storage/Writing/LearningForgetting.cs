using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>
/// Notes that what a club has learnt is to be counted anew, inside the transaction that takes a member's cases out: it is done after a death between the two as
/// well, and no older edition's numbers come back uncounted.
/// </summary>
internal static class LearningForgetting
{
    public static void Note(ILiteDatabase db, ClubId club)
    {
        var newest = TeachingLookups.NewestEdition(db, club);
        var book = TeachingLookups.LearningBook(db, club);
        if (newest == 0 && book.Version == 0)
        {
            return;
        }

        // What waits already is what was taken over; the newest edition may be without it meanwhile.
        var learnt = book.Anew.Length > 0 || newest == 0 ? book.Anew : TeachingLookups.Edition(db, club, newest)!.Learnt;
        var document = LearningBookDocument.ToBson(book.Next() with { LookedAt = null, Looked = "", Anew = learnt, Forgotten = newest });
        // No save may be taken for the one that was made before.
        document[SaveMark.Field] = "";
        db.GetCollection(LearningBookDocument.Collection).Upsert(Seal.Close(document));
    }
}
