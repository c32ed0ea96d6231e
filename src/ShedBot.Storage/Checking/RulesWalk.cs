using System.Globalization;
using LiteDB;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Checking;

/// <summary>Looks whether clubs' editions and audit lines are numbered from one without a gap, and whether each edition has its texts. Reads keys only.</summary>
internal static class RulesWalk
{
    public static void Take(ILiteDatabase db, List<string> problems)
    {
        try
        {
            Count(db, EditionDocument.Collection, problems);
            Count(db, AuditDocument.Collection, problems);
            if (!KeysOf(db, EditionDocument.Collection).SequenceEqual(KeysOf(db, LayerDocument.Collection), StringComparer.Ordinal))
            {
                problems.Add($"In {LayerDocument.Collection}: there are other texts than editions.");
            }
        }
        // As in the walk through the collections: a broken page may show as anything.
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            problems.Add($"In {EditionDocument.Collection}: {e.Message}");
        }
    }

    private static void Count(ILiteDatabase db, string collection, List<string> problems)
    {
        var (club, last) = ("", 0L);
        foreach (var key in KeysOf(db, collection))
        {
            var (of, digits) = Keys.Parted(key);
            last = of == club ? last + 1 : 1;
            club = of;
            if (long.Parse(digits, CultureInfo.InvariantCulture) is var number && number != last)
            {
                problems.Add($"In {collection}: number {last} of club '{club}' is missing.");
                last = number;
            }
        }
    }

    private static IEnumerable<string> KeysOf(ILiteDatabase db, string collection)
    {
        var path = Shelf.PathOf("_id");
        return Lookups.Query(db, collection).OrderBy(path).Select(path).ToEnumerable().Select(d => d.GetElements().First().Value.AsString);
    }
}
