using System.Globalization;
using LiteDB;

namespace ShedBot.Storage.Opening;

/// <summary>Layout 5 to 6: a club's closed cases are found at once; its rules and how they came about are kept, in collections of their own.</summary>
/// <remarks>Names and key are written out and not taken from the present mapping: that may change again, this step may not.</remarks>
internal static class TeachingStep
{
    /// <summary>Milliseconds from the year 1 to 1970.</summary>
    private const long YearOne = 62_135_596_800_000;

    private static readonly string[] Closed = ["Solved", "HandedOver", "Stopped", "Left"];

    public static SchemaStep ToSix { get; } = new("Clubs' own rules; closed cases by club", Change);

    private static BsonDocument Change(string collection, BsonDocument document)
    {
        if (collection == "cases")
        {
            document["byClosed"] = Closed.Contains(document["phase"].AsString) ? KeyOf(document) : BsonValue.Null;
        }

        return document;
    }

    private static BsonValue KeyOf(BsonDocument closed)
    {
        var member = closed["member"].AsString;
        var slash = member.IndexOf('/', StringComparison.Ordinal);
        var at = closed["closedAt"] is { IsInt64: true } closedAt ? closedAt.AsInt64 : closed["lastTurnAt"].AsInt64;
        return $"{(slash > 0 ? member[..slash] : "practice")}\n{(at + YearOne).ToString("D15", CultureInfo.InvariantCulture)}{closed["_id"].AsString}";
    }
}
