using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Storage.Documents;

/// <summary>What is noted of a club's learning, as it is stored, by club.</summary>
internal static class LearningBookDocument
{
    public const string Collection = "learning";

    public static BsonDocument ToBson(LearningBook b) => new()
    {
        ["_id"] = ClubDocument.Checked(b.Club),
        ["lookedAt"] = Times.ToBson(b.LookedAt),
        ["looked"] = b.Looked,
        ["anew"] = LayerDocument.Checked(b.Anew),
        ["forgotten"] = b.Forgotten,
        ["quietUntil"] = b.QuietUntil,
        ["version"] = b.Version,
    };

    public static LearningBook FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        _ = f.Text(SaveMark.Field);
        return new LearningBook(
            new ClubId(f.Text("_id")),
            f.TimeOrNull("lookedAt"),
            f.Text("looked"),
            f.Text("anew"),
            f.Whole("forgotten"),
            f.Whole("quietUntil"),
            f.Whole("version"));
    }
}
