using LiteDB;

namespace ShedBot.Storage.Documents;

/// <summary>
/// Tells whether two stored cases come from the same turn. Two turns that were taken side by side from the same case share version, turn
/// number and message ids, so everything is compared but the times: those differ when one turn is taken twice.
/// </summary>
internal static class SameTurn
{
    private static readonly HashSet<string> Times =
        ["crc", "openedAt", "lastTurnAt", "closedAt", "at", CaseDocument.ByMember, CaseDocument.ByPlace, CaseDocument.ByClosed];

    public static bool Is(BsonDocument one, BsonDocument other) => Alike(one, other);

    private static bool Alike(BsonValue one, BsonValue other) => (one, other) switch
    {
        ({ IsDocument: true }, { IsDocument: true }) => AlikeParts(one.AsDocument, other.AsDocument),
        ({ IsArray: true }, { IsArray: true }) =>
            one.AsArray.Count == other.AsArray.Count && one.AsArray.Zip(other.AsArray).All(p => Alike(p.First, p.Second)),
        _ => one.Type == other.Type && one.CompareTo(other, Collation.Binary) == 0,
    };

    private static bool AlikeParts(BsonDocument one, BsonDocument other) =>
        one.Keys.Count == other.Keys.Count && one.Keys.All(k => other.ContainsKey(k) && (Times.Contains(k) || Alike(one[k], other[k])));
}
