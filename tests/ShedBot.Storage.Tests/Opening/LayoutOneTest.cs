using ShedBot.Coaching.Cases;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 1 wrote, kept here as it was: three cases of two invented members.</summary>
public sealed class LayoutOneTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutOne_HasAllThatWasInIt()
    {
        Packed.File(1, scratch);
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.StartsWith(
            "sound; about 1, arrivals 0, audit 0, bikes 1, cases 3, clubs 0, editions 0, layers 0, learning 0, outbox 4, outcomes 1, proposals 0, riders 0, rooms 0, teaching 0, tips 0, unheard 0; schema 7;", store.Integrity.ToString(), StringComparison.Ordinal);
        var solved = Sample.Opened("case-1").Next().Next(phase: CasePhase.Solved);
        var open = Sample.Opened("case-2", place: "kitchen").Next().Next();
        Same.Assert(solved, await store.FindCaseAsync(solved.Id, Ct));
        Same.Assert(open, await store.FindOpenCaseAsync(Sample.Wren, "kitchen", Ct));
        Same.Assert(solved.BikeOf().Next(), await store.FindBikeAsync(solved.Bike, Ct));
        Same.Assert(solved.OutcomeOf(), Assert.Single(await store.OutcomesAsync(10, Ct)));
        var unsaid = await store.UnsaidAsync("shed-corner", 10, Ct);
        Assert.Equal(["two", "It holds.", "four"], unsaid.Words());
        Assert.All(unsaid, m => Assert.Equal(("", false), (m.Answers, m.Card.Repeated)));
        Assert.Equal(["shed-corner", "kitchen"], (await store.UnsaidPlacesAsync(10, Ct)).AsEnumerable());
    }

    [Fact]
    public async Task Open_FileOfLayoutOne_IsGoneOnWith()
    {
        Packed.File(1, scratch);
        await using var store = await OpenAsync();

        Assert.Equal("case-1", (await store.FindLastCaseAsync(Sample.Wren, "shed-corner", Ct))?.Id.Value);
        var last = await store.FindLastCaseAsync(Sample.Wren, "kitchen", Ct);
        await store.SaveAsync(last!.Next(phase: CasePhase.Left).Saying("five"), Ct);
        Assert.Equal(["three", "five"], (await store.UnsaidAsync("kitchen", 10, Ct)).Words());
        Assert.Equal(CasePhase.Left, (await store.FindLastCaseAsync(Sample.Wren, "kitchen", Ct))?.Phase);
    }

    [Fact]
    public async Task Open_FileOfLayoutOne_LaysCasesOutAsNewOnes()
    {
        Packed.File(1, scratch);
        await (await OpenAsync()).DisposeAsync();

        using var db = Lite.OpenToRead(scratch.Data);
        foreach (var document in db.GetCollection(CaseDocument.Collection).FindAll())
        {
            var fresh = CaseDocument.ToBson(CaseDocument.FromBson(document), []);
            Assert.Equal(fresh.Keys.Order(), document.Keys.Order());
            Assert.Equal(fresh[CaseDocument.ByPlace], document[CaseDocument.ByPlace]);
        }
    }

    [Fact]
    public async Task Open_FileOfLayoutOne_LeavesACopyThatCanBeBroughtUpToo()
    {
        Packed.File(1, scratch);
        await (await OpenAsync()).DisposeAsync();
        using (var before = Lite.OpenToRead(scratch.File("shed-before-7.db")))
        {
            Assert.Equal(1, About.Find(before));
            Assert.DoesNotContain("answers", before.GetCollection(OutboxDocument.Collection).FindAll().First().Keys);
        }

        File.Move(scratch.File("shed-before-7.db"), scratch.Data, overwrite: true);
        await using var store = await OpenAsync();
        Assert.Equal(["three"], (await store.UnsaidAsync("kitchen", 10, Ct)).Words());
    }

    [Fact]
    public async Task Open_ByAProgramOfLayoutOne_IsRefusedUntouched()
    {
        await (await OpenAsync()).DisposeAsync();
        var before = scratch.Contents();

        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(
            () => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, new StoreSchema([]), Ct));

        Assert.Equal(RefusalCodes.NewerSchema, refusal.Code);
        Assert.Contains("layout is version 7, this one knows up to 1", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(before, scratch.Contents());
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
