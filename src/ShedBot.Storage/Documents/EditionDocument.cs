using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>An edition of a club's rules as it is stored, by club and number; its texts lie apart in a <see cref="LayerDocument"/>, so that lists stay cheap.</summary>
internal static class EditionDocument
{
    public const string Collection = "editions";
    public const string By = "by";
    public const string ByName = "byName";

    public static BsonDocument ToBson(RulesEdition e) => new()
    {
        ["_id"] = ClubKeys.Of(e.Club, e.Number),
        ["club"] = e.Club.Value,
        ["number"] = e.Number,
        ["what"] = e.What,
        ["proposal"] = e.Proposal,
        [By] = e.By is { } by ? ClubKeys.Checked(by, e.Club) : BsonValue.Null,
        [ByName] = e.ByName,
        ["base"] = e.Base,
        ["at"] = Times.ToBson(e.At),
    };

    public static RulesEdition FromBson(BsonDocument document, string layer, string learnt)
    {
        var f = Fields.Of(Collection, document);
        _ = f.Text(SaveMark.Field);
        return new RulesEdition(
            new ClubId(f.Text("club")),
            f.Whole("number"),
            layer,
            learnt,
            f.Text("what"),
            f.TextOrNull("proposal"),
            f.TextOrNull(By) is { } by ? new MemberId(by) : null,
            f.Text(ByName),
            f.Text("base"),
            f.Time("at"));
    }
}
