using LiteDB;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Reading;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Reading;

/// <summary>Every lookup of a club's rules goes through its index and meets nothing of another club.</summary>
public sealed class TeachingPlanTest : IDisposable
{
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Lookups_ByIndex_ScanNothingElse()
    {
        using var db = Make();

        foreach (var collection in new[] { EditionDocument.Collection, AuditDocument.Collection, UnheardDocument.Collection })
        {
            AssertPlan(TeachingLookups.NumberedQuery(db, collection, Twelve), "INDEX RANGE SCAN(_id", "document");
        }

        AssertPlan(TeachingLookups.AuditQuery(db, Twelve, 9), "INDEX RANGE SCAN(_id", "document");
        AssertPlan(TeachingLookups.ProposalsQuery(db, Twelve, ProposalState.Draft), "INDEX RANGE SCAN(byState", "document");
        AssertPlan(TeachingLookups.TipsQuery(db, Twelve, TipState.Waiting), "INDEX RANGE SCAN(byState", "document");
        AssertPlan(ClosedCases.Query(db, Twelve), "INDEX RANGE SCAN(byClosed", "document");
    }

    [Fact]
    public void Keys_FromTheIndex_LoadNoDocument()
    {
        using var db = Make();

        AssertPlan(ClosedCases.KeysQuery(db, Twelve, Sample.Noon), "INDEX RANGE SCAN(byClosed", "index");
        AssertPlan(TeachingLookups.NumberedKeysQuery(db, EditionDocument.Collection, Twelve), "INDEX RANGE SCAN(_id", "index");
        AssertPlan(TeachingLookups.KeysOfClubQuery(db, LayerDocument.Collection, Twelve), "INDEX RANGE SCAN(_id", "index");
    }

    /// <summary>A collection without an index of its own is there once something is in it.</summary>
    private LiteDatabase Make()
    {
        var db = Lite.Make(scratch.Data);
        Shelf.EnsureIndexes(db);
        foreach (var shelf in Shelf.All)
        {
            db.GetCollection(shelf.Collection).Insert(new BsonDocument { ["_id"] = "x" });
        }

        return db;
    }

    private static void AssertPlan(ILiteQueryableResult<BsonDocument> query, string index, string loader)
    {
        var plan = query.GetPlan();
        Assert.StartsWith(index, plan["index"]["mode"].AsString, StringComparison.Ordinal);
        Assert.Equal(loader, plan["lookup"]["loader"].AsString);
        Assert.False(plan.ContainsKey("orderBy"), plan.ToString());
        Assert.False(plan.ContainsKey("filters"), plan.ToString());
    }
}
