using ShedBot.Coaching.Cases;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>An older layout is brought up as a whole or stays as it was. The steps here exist for the test only.</summary>
public sealed class UpgradeTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;

    private static readonly SchemaStep Louder = new("places in capitals", (collection, document) =>
    {
        if (collection == CaseDocument.Collection)
        {
            document["place"] = document["place"].AsString.ToUpperInvariant();
        }

        return document;
    });

    private static readonly SchemaStep Marked = new("a mark behind the place", (collection, document) =>
    {
        if (collection == CaseDocument.Collection)
        {
            document["place"] = document["place"].AsString + "!";
        }

        return document;
    });

    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_LayoutTwoStepsBehind_TakesBothInOrderAndKeepsACopy()
    {
        await FillAsync();
        await using (var store = await OpenAsync(Louder, Marked))
        {
            Assert.Equal(3, store.Integrity.Schema);
            Assert.Equal("SHED-CORNER!", (await store.FindCaseAsync(new CaseId("case-1"), Ct))!.Place);
        }

        await using (var again = await OpenAsync(Louder, Marked))
        {
            Assert.Equal("SHED-CORNER!", (await again.FindCaseAsync(new CaseId("case-1"), Ct))!.Place);
        }

        await using var before = await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.File("shed-before-3.db") }, Ct);
        Assert.Equal("shed-corner", (await before.FindCaseAsync(new CaseId("case-1"), Ct))!.Place);
    }

    [Fact]
    public async Task Open_LayoutOneStepBehind_TakesTheLastStepOnly()
    {
        await FillAsync();
        await (await OpenAsync(Louder)).DisposeAsync();
        await using var store = await OpenAsync(Louder, Marked);

        Assert.Equal("SHED-CORNER!", (await store.FindCaseAsync(new CaseId("case-1"), Ct))!.Place);
    }

    [Fact]
    public async Task Open_StepThatFailsHalfway_LeavesTheStoreAsItWas()
    {
        await FillAsync();
        var failing = new SchemaStep("fails at the second case", (collection, document) =>
            document["_id"] == "case-2" ? throw new FormatException("no second case") : Louder.Change(collection, document));

        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(() => OpenAsync(failing));

        Assert.Equal(RefusalCodes.UpgradeFailed, refusal.Code);
        Assert.Contains("no second case", refusal.Message, StringComparison.Ordinal);
        await AssertAsItWasAsync();
    }

    [Fact]
    public async Task Open_StepThatMakesDocumentsUnreadable_LeavesTheStoreAsItWas()
    {
        await FillAsync();
        var breaking = new SchemaStep("drops what is needed", (_, document) =>
        {
            document.Remove("phase");
            return document;
        });

        Assert.Equal(RefusalCodes.UpgradeFailed, (await Assert.ThrowsAsync<StoreRefusedException>(() => OpenAsync(breaking))).Code);
        await AssertAsItWasAsync();
    }

    private async Task AssertAsItWasAsync()
    {
        await using var store = await OpenAsync();
        Assert.Equal(1, store.Integrity.Schema);
        Assert.Equal("shed-corner", (await store.FindCaseAsync(new CaseId("case-1"), Ct))!.Place);
    }

    private async Task FillAsync()
    {
        await using var store = await OpenAsync();
        await store.SaveAsync(Sample.Opened("case-1").Next().Saying("one"), Ct);
        await store.SaveAsync(Sample.Opened("case-2", "pip").Next().Saying("two"), Ct);
    }

    private Task<LiteShedStore> OpenAsync(params SchemaStep[] steps) =>
        LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, new StoreSchema([.. steps]), Ct);
}
