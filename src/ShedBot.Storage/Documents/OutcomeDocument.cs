using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Documents;

/// <summary>How a case ended, as it is stored: one for each case, the last one standing when a case was closed twice.</summary>
internal static class OutcomeDocument
{
    public const string Collection = "outcomes";

    /// <summary>Time, then case: oldest first, and never two alike.</summary>
    public const string ByTime = "byTime";

    public static BsonDocument ToBson(Outcome o) => Seal.Close(new BsonDocument
    {
        ["_id"] = Keys.Checked(o.Case.Value, "case id"),
        [ByTime] = Times.Key(o.At) + o.Case.Value,
        ["phase"] = o.Phase.ToString(),
        ["repair"] = o.Repair,
        ["causes"] = new BsonArray(o.Causes.Select(CauseToBson)),
        ["asked"] = o.Asked,
        ["knowledgeVersion"] = o.KnowledgeVersion,
        ["at"] = Times.ToBson(o.At),
    });

    public static Outcome FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new Outcome(
            new CaseId(f.Text("_id")),
            f.Named<CasePhase>("phase"),
            f.TextOrNull("repair"),
            f.List("causes", c => new OutcomeCause(c.Text("fault"), c.Real("chance"))),
            f.Whole("asked"),
            f.Text("knowledgeVersion"),
            f.Time("at"));
    }

    private static BsonDocument CauseToBson(OutcomeCause c) => new BsonDocument { ["fault"] = c.Fault, ["chance"] = c.Chance };
}
