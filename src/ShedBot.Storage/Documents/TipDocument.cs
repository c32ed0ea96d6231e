using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>A tip as it is stored, by club and id.</summary>
internal static class TipDocument
{
    public const string Collection = "tips";

    /// <summary>Club, state, time at which it came, id.</summary>
    public const string ByState = "byState";

    public static BsonDocument ToBson(Tip t) => new()
    {
        ["_id"] = ClubKeys.Of(t.Club, t.Id, "tip id"),
        ["club"] = t.Club.Value,
        ["id"] = t.Id,
        [ByState] = ClubKeys.Of(t.Club, t.State, t.At, t.Id),
        ["from"] = ClubKeys.Checked(t.From, t.Club),
        ["fromName"] = t.FromName,
        ["passedOnBy"] = ClubKeys.Checked(t.PassedOnBy, t.Club),
        ["words"] = t.Words,
        ["where"] = t.Where,
        ["state"] = t.State.ToString(),
        ["proposal"] = t.Proposal,
        ["answer"] = t.Answer,
        ["at"] = Times.ToBson(t.At),
        ["version"] = t.Version,
    };

    public static Tip FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        _ = f.Text(SaveMark.Field);
        return new Tip(
            f.Text("id"),
            new ClubId(f.Text("club")),
            new MemberId(f.Text("from")),
            f.Text("fromName"),
            new MemberId(f.Text("passedOnBy")),
            f.Text("words"),
            f.Text("where"),
            f.Named<TipState>("state"),
            f.TextOrNull("proposal"),
            f.Text("answer"),
            f.Time("at"),
            f.Whole("version"));
    }
}
