using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>How a club goes about its rules, as it is stored, by club.</summary>
internal static class TeachingSettingsDocument
{
    public const string Collection = "teaching";

    public static BsonDocument ToBson(TeachingSettings s) => new()
    {
        ["_id"] = ClubDocument.Checked(s.Club),
        ["proposeRoles"] = new BsonArray(s.ProposeRoles.Select(r => new BsonValue(r))),
        ["publishRoles"] = new BsonArray(s.PublishRoles.Select(r => new BsonValue(r))),
        ["twoPeople"] = s.TwoPeople,
        ["learning"] = s.Learning.ToString(),
        ["mostFactor"] = s.MostFactor,
        ["memberShare"] = s.MemberShare,
        ["off"] = new BsonArray(s.Off.Select(o => new BsonValue(o))),
        ["version"] = s.Version,
    };

    public static TeachingSettings FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        _ = f.Text(SaveMark.Field);
        return new TeachingSettings(
            new ClubId(f.Text("_id")),
            f.Texts("proposeRoles").ToImmutableSortedSet(StringComparer.Ordinal),
            f.Texts("publishRoles").ToImmutableSortedSet(StringComparer.Ordinal),
            f.Flag("twoPeople"),
            f.Named<LearningMode>("learning"),
            f.Real("mostFactor"),
            f.Real("memberShare"),
            f.Texts("off").ToImmutableSortedSet(StringComparer.Ordinal),
            f.Whole("version"));
    }
}
