using System.Collections.Immutable;
using System.IO.Hashing;
using LiteDB;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Checking;

/// <summary>Walks every collection by id and by each index: every document must read whole, and every index must lead to the same ones, in order.</summary>
internal static class IntegrityWalk
{
    public static (ImmutableSortedDictionary<string, int> Counts, ImmutableArray<string> Problems) Nothing { get; } =
        (ImmutableSortedDictionary<string, int>.Empty, []);

    public static (ImmutableSortedDictionary<string, int> Counts, ImmutableArray<string> Problems) Take(ILiteDatabase db)
    {
        var counts = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        var problems = new List<string>();
        foreach (var shelf in Shelf.All)
        {
            try
            {
                var whole = ById(db, shelf, problems);
                counts[shelf.Collection] = whole.Count;
                foreach (var index in shelf.Indexes)
                {
                    ByIndex(db, shelf, index, whole, problems);
                }
            }
            // LiteDB meets a broken page with whatever exception comes first: a cast, an index, a negative length.
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                problems.Add($"In {shelf.Collection}: {e.Message}");
            }
        }

        return (counts.ToImmutable(), [.. problems.Take(IntegrityReport.MostProblems)]);
    }

    private static Tally ById(ILiteDatabase db, Shelf shelf, List<string> problems)
    {
        var tally = default(Tally);
        foreach (var document in db.GetCollection(shelf.Collection).Query().OrderBy("$._id").ToEnumerable())
        {
            tally = tally.With(document["_id"]);
            try
            {
                shelf.Read(document);
            }
            catch (StoredDocumentException e)
            {
                problems.Add(e.Message);
            }
        }

        return tally;
    }

    private static void ByIndex(ILiteDatabase db, Shelf shelf, string index, Tally whole, List<string> problems)
    {
        var tally = default(Tally);
        var inOrder = true;
        BsonValue last = BsonValue.MinValue;
        foreach (var document in db.GetCollection(shelf.Collection).Query().OrderBy("$." + index).ToEnumerable())
        {
            tally = tally.With(document["_id"]);
            inOrder &= last.CompareTo(document[index], Collation.Binary) <= 0;
            last = document[index];
        }

        if (tally != whole || !inOrder)
        {
            problems.Add($"In {shelf.Collection}, the index {index} leads to {tally.Count} of {whole.Count} documents{(inOrder ? "" : ", out of order")}.");
        }
    }

    /// <summary>How many ids were met and the sum of their hashes: the same in any order, and no set of a million ids in memory.</summary>
    private readonly record struct Tally(int Count, ulong Sum)
    {
        public Tally With(BsonValue id) =>
            new(Count + 1, unchecked(Sum + XxHash3.HashToUInt64(System.Text.Encoding.UTF8.GetBytes(id.ToString()))));
    }
}
