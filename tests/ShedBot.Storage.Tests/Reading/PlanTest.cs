using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Storage.Documents;
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
        AssertPlan(Lookups.LastCaseQuery(db, Sample.Wren, "corner"), "INDEX RANGE SCAN(byPlace");
        AssertPlan(Lookups.CasesOfQuery(db, Sample.Wren), "INDEX RANGE SCAN(byMember");
        AssertPlan(Lookups.BikesOfQuery(db, Sample.Wren), "INDEX SEEK(owner");
        AssertPlan(Lookups.UnsaidQuery(db, "corner"), "INDEX RANGE SCAN(byPlace");
        AssertPlan(Lookups.OutcomesQuery(db), "FULL INDEX SCAN(byTime");
    }

    [Fact]
    public void ClubLookups_ByIndex_ScanNothingElse()
    {
        using var db = Lite.Make(scratch.Data);
        Shelf.EnsureIndexes(db);

        AssertPlan(ClubLookups.RoomByThreadQuery(db, "t-1"), "INDEX SEEK(thread");
        AssertPlan(ClubLookups.RoomsOfQuery(db, Sample.Wren), "INDEX RANGE SCAN(byMember");
        AssertPlan(ClubLookups.OpenRoomsQuery(db), "INDEX RANGE SCAN(byOpening");
        foreach (var (collection, index) in new[]
        {
            (CaseDocument.Collection, CaseDocument.ByMember), (BikeDocument.Collection, BikeDocument.ByOwner), (RoomDocument.Collection, RoomDocument.ByMember),
        })
        {
            AssertPlan(ClubLookups.OfMembersQuery(db, collection, index, new ClubId("12")), $"INDEX RANGE SCAN({index}");
        }
    }

    [Fact]
    public void UnsaidKeys_FromTheIndex_LoadNoDocument()
    {
        using var db = Lite.Make(scratch.Data);
        Shelf.EnsureIndexes(db);
        var plan = ClubLookups.UnsaidKeysQuery(db).GetPlan();

        Assert.StartsWith("FULL INDEX SCAN(byPlace", plan["index"]["mode"].AsString, StringComparison.Ordinal);
        Assert.Equal("index", plan["lookup"]["loader"].AsString);
    }

    [Fact]
    public void DueRiders_ByNextLook_ScanNothingElse()
    {
        using var db = Lite.Make(scratch.Data);
        Shelf.EnsureIndexes(db);

        AssertPlan(RiderLookups.DueQuery(db, Sample.Noon), "INDEX RANGE SCAN(byLook");
        AssertPlan(RiderLookups.OfClubQuery(db, new ClubId("12")), "INDEX RANGE SCAN(_id");
    }

    private static void AssertPlan(ILiteQueryable<BsonDocument> query, string index)
    {
        var plan = query.GetPlan();
        Assert.StartsWith(index, plan["index"]["mode"].AsString, StringComparison.Ordinal);
        Assert.False(plan.ContainsKey("orderBy"), plan.ToString());
        Assert.False(plan.ContainsKey("filters"), plan.ToString());
    }
}
