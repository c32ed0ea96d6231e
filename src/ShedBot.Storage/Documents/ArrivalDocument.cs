using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Documents;

/// <summary>Something that was acknowledged before it was dealt with, as it is stored. It is removed once it was dealt with.</summary>
internal static class ArrivalDocument
{
    public const string Collection = "arrivals";
    public const string Member = "member";

    public static BsonDocument ToBson(Arrival a) => Seal.Close(new BsonDocument
    {
        ["_id"] = Keys.Checked(a.Id, "event id"),
        [Member] = Keys.Checked(a.Member.Value, "member id"),
        ["content"] = a.Content,
        ["at"] = Times.ToBson(a.At),
    });

    public static Arrival FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new Arrival(f.Text("_id"), new MemberId(f.Text(Member)), f.Text("content"), f.Time("at"));
    }
}
