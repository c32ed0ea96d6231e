using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>Keeps and drops words that were not understood, inside the transaction it is called in.</summary>
internal static class UnheardWriter
{
    /// <summary>The most that are kept for a club.</summary>
    public const int MostOfAClub = 2_000;

    /// <summary>Keeps them as the newest of the club; the oldest go.</summary>
    public static void Add(ILiteDatabase db, UnheardWords words)
    {
        var unheard = db.GetCollection(UnheardDocument.Collection);
        var club = ClubId.Serving(words.Member);
        var numbers = TeachingLookups.Numbers(db, UnheardDocument.Collection, club);
        foreach (var old in numbers.Skip(MostOfAClub - 1))
        {
            unheard.Delete(ClubKeys.Of(club, old));
        }

        unheard.Insert(UnheardDocument.ToBson(words, 1 + (numbers is [var newest, ..] ? newest : 0)));
    }

    /// <summary>Drops those that say the same, whether in capitals or not, with space around them or not.</summary>
    public static void Drop(ILiteDatabase db, ClubId club, string words)
    {
        var same = words.Trim();
        Drop(db, club, d => d[UnheardDocument.Words].AsString.Trim().Equals(same, StringComparison.OrdinalIgnoreCase));
    }

    public static void Drop(ILiteDatabase db, ClubId club, Predicate<BsonDocument> which)
    {
        // Ids first: a collection must not be changed while it is walked.
        foreach (var id in TeachingLookups.NumberedQuery(db, UnheardDocument.Collection, club).ToList().Where(d => which(d)).Select(d => d["_id"]).ToList())
        {
            db.GetCollection(UnheardDocument.Collection).Delete(id);
        }
    }
}
