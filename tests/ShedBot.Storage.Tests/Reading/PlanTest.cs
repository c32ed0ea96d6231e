using LiteDB;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Tests.Reading;

/// <summary>Every lookup goes through its index, from both ends where it has two, and nothing is sorted afterwards.</summary>
public sealed class PlanTest : IDisposable
{
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Lookups_ByIndex_ScanNothingElse()
    {
        using var db = Lite.Make(scratch.Data);
        Shelf.EnsureIndexes(db);

        AssertPlan(Lookups.OpenCaseQuery(db, Sample.Wren, "corner"), "INDEX SEEK(byOpenPlace");
        AssertPlan(Lookups.CasesOfQuery(db, Sample.Wren), "INDEX RANGE SCAN(byMember");
        AssertPlan(Lookups.BikesOfQuery(db, Sample.Wren), "INDEX SEEK(owner");
        AssertPlan(Lookups.UnsaidQuery(db, "corner"), "INDEX RANGE SCAN(byPlace");
        AssertPlan(Lookups.OutcomesQuery(db), "FULL INDEX SCAN(byTime");
    }

    private static void AssertPlan(ILiteQueryable<BsonDocument> query, string index)
    {
        var plan = query.GetPlan();
        Assert.StartsWith(index, plan["index"]["mode"].AsString, StringComparison.Ordinal);
        Assert.False(plan.ContainsKey("orderBy"), plan.ToString());
        Assert.False(plan.ContainsKey("filters"), plan.ToString());
    }
}
