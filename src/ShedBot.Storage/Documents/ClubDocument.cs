using LiteDB;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Documents;

/// <summary>A club's settings as they are stored.</summary>
internal static class ClubDocument
{
    public const string Collection = "clubs";
    public const string Version = "version";

    public static BsonDocument ToBson(Club c) => Seal.Close(new BsonDocument
    {
        ["_id"] = Checked(c.Id),
        ["helpChannel"] = c.HelpChannel,
        ["helperRole"] = c.HelperRole,
        ["units"] = c.Units.ToString(),
        ["timeZone"] = c.TimeZone,
        ["lastHeard"] = c.LastHeard,
        ["leftAt"] = Times.ToBson(c.LeftAt),
        [Version] = c.Version,
    });

    public static Club FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new Club(
            new ClubId(f.Text("_id")),
            f.TextOrNull("helpChannel"),
            f.TextOrNull("helperRole"),
            f.Named<Units>("units"),
            f.Text("timeZone"),
            f.TextOrNull("lastHeard"),
            f.TimeOrNull("leftAt"),
            f.Whole(Version));
    }

    /// <exception cref="ArgumentException">The id is no key, or holds what divides club from member: then two clubs could mix.</exception>
    public static string Checked(ClubId id) => Keys.Checked(id.Value, "club id").Contains(ClubId.Between, StringComparison.Ordinal)
        ? throw new ArgumentException($"A club id holds no '{ClubId.Between}'.", nameof(id))
        : id.Value;

    /// <summary>What every member id of the club, and every key made from one, begins with.</summary>
    public static string FirstOf(ClubId id) => Checked(id) + ClubId.Between;

    /// <summary>The least text above all that begins with <see cref="FirstOf"/>.</summary>
    public static string Above(ClubId id) => Checked(id) + (char)(ClubId.Between + 1);
}
