using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Documents;

/// <summary>A room as it is stored, by its place.</summary>
internal static class RoomDocument
{
    public const string Collection = "rooms";

    /// <summary>Null until the thread is made.</summary>
    public const string ByThread = "thread";

    /// <summary>Member, time of opening, place.</summary>
    public const string ByMember = "byMember";

    /// <summary>Time of opening and place while the room is open, else null.</summary>
    public const string ByOpening = "byOpening";

    public const string Helpers = "helpers";
    public const string Version = "version";

    /// <exception cref="ArgumentException">Something in it is no key, or a member is not of the room's club: forgetting a club would not find them.</exception>
    public static BsonDocument ToBson(Room r)
    {
        var opening = Times.Key(r.OpenedAt) + Keys.Checked(r.Place, "place");
        return Seal.Close(new BsonDocument
        {
            ["_id"] = r.Place,
            ["club"] = ClubDocument.Checked(r.Club),
            ["member"] = Checked(r.Member, r.Club),
            ["channel"] = r.Channel,
            [ByThread] = r.Thread is null ? BsonValue.Null : Keys.Checked(r.Thread, "thread"),
            [ByMember] = Keys.Join(r.Member.Value, opening),
            [ByOpening] = r.State == RoomState.Open ? opening : BsonValue.Null,
            ["ownThread"] = r.OwnThread,
            ["source"] = r.Source,
            ["private"] = r.Private,
            ["name"] = r.Name,
            ["panel"] = r.Panel,
            [Helpers] = new BsonArray(r.Helpers.Select(h => new BsonValue(Checked(h, r.Club)))),
            ["hinted"] = r.Hinted,
            ["lastHeard"] = r.LastHeard,
            ["state"] = r.State.ToString(),
            ["openedAt"] = Times.ToBson(r.OpenedAt),
            [Version] = r.Version,
        });
    }

    public static Room FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new Room(
            f.Text("_id"),
            new ClubId(f.Text("club")),
            new MemberId(f.Text("member")),
            f.Text("channel"),
            f.TextOrNull(ByThread),
            f.Flag("ownThread"),
            f.TextOrNull("source"),
            f.Flag("private"),
            f.Text("name"),
            f.TextOrNull("panel"),
            [.. f.Texts(Helpers).Select(h => new MemberId(h))],
            f.Flag("hinted"),
            f.TextOrNull("lastHeard"),
            f.Named<RoomState>("state"),
            f.Time("openedAt"),
            f.Whole(Version));
    }

    private static string Checked(MemberId member, ClubId club) => ClubId.Of(member) == club
        ? Keys.Checked(member.Value, "member id")
        : throw new ArgumentException($"'{member}' is no member of the room's club '{club}'.", nameof(member));
}
