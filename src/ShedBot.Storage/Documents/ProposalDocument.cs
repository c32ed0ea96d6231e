using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Documents;

/// <summary>A proposal as it is stored, by club and id.</summary>
internal static class ProposalDocument
{
    public const string Collection = "proposals";

    /// <summary>Club, state, time of the last change, id.</summary>
    public const string ByState = "byState";

    // Answers are a list, not fields: field names of the file format do not tell upper from lower case.
    public static BsonDocument ToBson(Proposal p) => new()
    {
        ["_id"] = ClubKeys.Of(p.Club, p.Id, "proposal id"),
        ["club"] = p.Club.Value,
        ["id"] = p.Id,
        [ByState] = ClubKeys.Of(p.Club, p.State, p.ChangedAt, p.Id),
        ["by"] = p.By == default ? BsonValue.Null : ClubKeys.Checked(p.By, p.Club),
        ["byName"] = p.ByName,
        ["state"] = p.State.ToString(),
        ["sheet"] = p.Sheet,
        ["answers"] = new BsonArray(p.Answers.Select(AnswersToBson)),
        ["title"] = p.Title,
        ["changes"] = LayerDocument.Checked(p.Changes),
        ["learnt"] = LayerDocument.Checked(p.Learnt),
        ["tip"] = p.Tip,
        ["trial"] = p.Trial is { } trial ? TrialToBson(trial) : BsonValue.Null,
        ["reason"] = p.Reason,
        ["edition"] = p.Edition,
        ["begunAt"] = Times.ToBson(p.BegunAt),
        ["changedAt"] = Times.ToBson(p.ChangedAt),
        ["version"] = p.Version,
    };

    public static Proposal FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        _ = f.Text(SaveMark.Field);
        return new Proposal(
            f.Text("id"),
            new ClubId(f.Text("club")),
            f.TextOrNull("by") is { } by ? new MemberId(by) : default,
            f.Text("byName"),
            f.Named<ProposalState>("state"),
            f.Text("sheet"),
            f.List("answers", AnswersFromBson).ToImmutableSortedDictionary(StringComparer.Ordinal),
            f.Text("title"),
            f.Text("changes"),
            f.Text("learnt"),
            f.TextOrNull("tip"),
            f.PartOrNull("trial") is { } trial ? TrialFromBson(trial) : null,
            f.Text("reason"),
            f.Whole("edition"),
            f.Time("begunAt"),
            f.Time("changedAt"),
            f.Whole("version"));
    }

    private static BsonDocument AnswersToBson(KeyValuePair<string, ImmutableArray<string>> given) => new()
    {
        ["question"] = given.Key,
        ["given"] = new BsonArray(given.Value.Select(a => new BsonValue(a))),
    };

    private static KeyValuePair<string, ImmutableArray<string>> AnswersFromBson(Fields f) => new(f.Text("question"), f.Texts("given"));

    private static BsonDocument TrialToBson(ProposalTrial t) => new()
    {
        ["changes"] = t.Changes,
        ["edition"] = t.Edition,
        ["base"] = t.Base,
        ["report"] = LayerDocument.Checked(t.Report),
        ["safe"] = t.Safe,
        ["at"] = Times.ToBson(t.At),
    };

    private static ProposalTrial TrialFromBson(Fields f) =>
        new(f.Text("changes"), f.Whole("edition"), f.Text("base"), f.Text("report"), f.Flag("safe"), f.Time("at"));
}
