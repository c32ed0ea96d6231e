using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;

namespace ShedBot.Storage.Documents;

/// <summary>Words that were not understood as they are stored, by the club that serves the member and a number that grows with each.</summary>
internal static class UnheardDocument
{
    public const string Collection = "unheard";
    public const string Member = "member";
    public const string Words = "words";

    public static BsonDocument ToBson(UnheardWords u, long number) => Seal.Close(new BsonDocument
    {
        ["_id"] = ClubKeys.Of(ClubId.Serving(u.Member), number),
        [Member] = Keys.Checked(u.Member.Value, "member id"),
        [Words] = u.Words,
        ["expected"] = u.Expected,
        ["at"] = Times.ToBson(u.At),
    });

    public static UnheardWords FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new UnheardWords(new MemberId(f.Text(Member)), f.Text(Words), f.Text("expected"), f.Time("at"));
    }
}
