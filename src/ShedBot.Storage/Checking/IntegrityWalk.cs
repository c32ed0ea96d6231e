using System.Collections.Immutable;
using System.IO.Hashing;
using System.Text;
using LiteDB;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Checking;

/// <summary>Walks every collection by id and by each index: every document must read whole, and every index must be there, lead to the same ones, and hold their keys.</summary>
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
                var keys = new Dictionary<string, Tally>(StringComparer.Ordinal);
                var ids = ById(db, shelf, keys, problems);
                counts[shelf.Collection] = ids.Count;
                foreach (var index in shelf.Indexes)
                {
                    ByIndex(db, shelf, index, ids, keys.GetValueOrDefault(index), problems);
                }
            }
            // LiteDB meets a broken page with whatever exception comes first: a cast, an index, a negative length.
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                problems.Add($"In {shelf.Collection}: {e.Message}");
            }
        }

        RulesWalk.Take(db, problems);
        return (counts.ToImmutable(), [.. problems.Take(IntegrityReport.MostProblems)]);
    }

    private static Tally ById(ILiteDatabase db, Shelf shelf, Dictionary<string, Tally> keys, List<string> problems)
    {
        var ids = default(Tally);
        foreach (var document in db.GetCollection(shelf.Collection).Query().OrderBy("$._id").ToEnumerable())
        {
            ids = ids.With(document["_id"]);
            foreach (var index in shelf.Indexes)
            {
                keys[index] = keys.GetValueOrDefault(index).With(document[index]);
            }

            try
            {
                shelf.Read(document);
            }
            catch (StoredDocumentException e)
            {
                problems.Add(e.Message);
            }
        }

        return ids;
    }

    private static void ByIndex(ILiteDatabase db, Shelf shelf, string index, Tally ids, Tally keys, List<string> problems)
    {
        var path = Shelf.PathOf(index);
        var listed = db.GetCollection("$indexes").Query()
            .Where("$.collection = @0 AND $.name = @1 AND $.expression = @2", shelf.Collection, index, path).Count();
        if (listed != 1)
        {
            problems.Add($"In {shelf.Collection}, the index {index} is missing.");
            return;
        }

        var query = db.GetCollection(shelf.Collection).Query();
        var led = query.OrderBy(path).ToEnumerable().Aggregate(default(Tally), (t, d) => t.With(d["_id"]));
        // A query for the one field takes it from the index, not from the document: a key that was damaged there shows here only.
        var held = db.GetCollection(shelf.Collection).Query().OrderBy(path).Select(path).ToEnumerable()
            .Aggregate(default(Tally), (t, d) => t.With(d.GetElements().First().Value));
        if (led != ids || held != keys)
        {
            problems.Add($"In {shelf.Collection}, the index {index} leads to {led.Count} of {ids.Count} documents, or holds other keys than they do.");
        }
    }

    /// <summary>How many values were met and the sum of their hashes: the same in any order, and no set of a million ids in memory.</summary>
    private readonly record struct Tally(int Count, ulong Sum)
    {
        public Tally With(BsonValue value) =>
            new(Count + 1, unchecked(Sum + XxHash3.HashToUInt64(Encoding.UTF8.GetBytes(value.ToString()))));
    }
}
