using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>A line of what was done to a club's rules as it is stored, by club and number.</summary>
internal static class AuditDocument
{
    public const string Collection = "audit";
    public const string Who = "who";
    public const string Name = "name";

    public static BsonDocument ToBson(AuditEntry a) => Seal.Close(new BsonDocument
    {
        ["_id"] = ClubKeys.Of(a.Club, a.Number),
        ["club"] = a.Club.Value,
        ["number"] = a.Number,
        [Who] = a.Who is { } who ? ClubKeys.Checked(who, a.Club) : BsonValue.Null,
        [Name] = a.Name,
        ["act"] = a.Act.ToString(),
        ["subject"] = a.Subject,
        ["what"] = a.What,
        ["at"] = Times.ToBson(a.At),
    });

    public static AuditEntry FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new AuditEntry(
            new ClubId(f.Text("club")),
            f.Long("number"),
            f.TextOrNull(Who) is { } who ? new MemberId(who) : null,
            f.Text(Name),
            f.Named<AuditAct>("act"),
            f.Text("subject"),
            f.Text("what"),
            f.Time("at"));
    }
}
