using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Service;

namespace ShedBot.Storage.Documents;

/// <summary>A bike as it is stored.</summary>
internal static class BikeDocument
{
    public const string Collection = "bikes";
    public const string ByOwner = "owner";
    public const string Version = "version";

    // Facts are a list, not fields: field names of the file format do not tell upper from lower case.
    public static BsonDocument ToBson(BikeProfile b) => Seal.Close(new BsonDocument
    {
        ["_id"] = Keys.Checked(b.Id.Value, "bike id"),
        [ByOwner] = Keys.Checked(b.Owner.Value, "member id"),
        ["name"] = b.Name,
        ["facts"] = new BsonArray(b.Facts.Select(f => FactToBson(f.Key, f.Value))),
        ["work"] = new BsonArray(b.Work.Select(WorkToBson)),
        ["riding"] = RidingPart.ToBson(b.Riding),
        ["done"] = new BsonArray(b.Done.Select(DoneToBson)),
        ["handled"] = new BsonArray(b.Handled.Select(h => new BsonValue(h))),
        [Version] = b.Version,
    });

    public static BikeProfile FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        return new BikeProfile(
            new BikeId(f.Text("_id")),
            new MemberId(f.Text(ByOwner)),
            f.Text("name"),
            f.List("facts", FactFromBson).ToImmutableSortedDictionary(StringComparer.Ordinal),
            f.List("work", WorkFromBson),
            RidingPart.FromBson(f.Part("riding")),
            f.List("done", DoneFromBson),
            f.Texts("handled"),
            f.Whole(Version));
    }

    private static BsonDocument FactToBson(string rule, BikeFact fact) => new BsonDocument
    {
        ["fact"] = rule,
        ["value"] = fact.Value,
        ["learnt"] = Times.ToBson(fact.Learnt),
        ["how"] = fact.How,
    };

    private static KeyValuePair<string, BikeFact> FactFromBson(Fields f) =>
        new(f.Text("fact"), new BikeFact(f.Text("value"), f.Time("learnt"), f.Text("how")));

    private static BsonDocument WorkToBson(WorkDone w) => new BsonDocument
    {
        ["repair"] = w.Repair,
        ["what"] = w.What,
        ["case"] = w.Case.Value,
        ["at"] = Times.ToBson(w.At),
    };

    private static WorkDone WorkFromBson(Fields f) => new(f.Text("repair"), f.Text("what"), new CaseId(f.Text("case")), f.Time("at"));

    private static BsonDocument DoneToBson(ServiceDone d) => new BsonDocument
    {
        ["task"] = d.Task,
        ["day"] = Days.ToBson(d.Day),
        ["loggedAt"] = Times.ToBson(d.LoggedAt),
        ["how"] = d.How,
        ["case"] = d.Case?.Value,
    };

    private static ServiceDone DoneFromBson(Fields f) => new(
        f.Text("task"), f.Day("day"), f.Time("loggedAt"), f.Text("how"), f.TextOrNull("case") is { } c ? new CaseId(c) : null);
}
