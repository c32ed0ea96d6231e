using System.Text;
using ShedBot.Coaching.Clubs;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>Clubs' rules with something missing never pass for whole; and whole, they are in every copy.</summary>
public sealed class RulesDamageTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Theory]
    [InlineData(EditionDocument.Collection, 2, "number 2 of club '12' is missing")]
    [InlineData(EditionDocument.Collection, 3, "other texts than editions")]
    [InlineData(AuditDocument.Collection, 1, "number 1 of club '12' is missing")]
    [InlineData(LayerDocument.Collection, 3, "other texts than editions")]
    public async Task Open_OneDocumentGone_IsRefused(string collection, int number, string problem)
    {
        await FillAsync();
        using (var db = Lite.Open(scratch.Data))
        {
            Assert.True(db.GetCollection(collection).Delete(ClubKeys.Of(Twelve, number)));
        }

        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(OpenAsync);

        Assert.Equal(RefusalCodes.Damaged, refusal.Code);
        Assert.Contains(problem, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_OneLetterOfALayerChanged_IsRefused()
    {
        await FillAsync();
        var bytes = File.ReadAllBytes(scratch.Data);
        bytes[bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("covers: a club's"))] = (byte)'k';
        File.WriteAllBytes(scratch.Data, bytes);

        Assert.Contains("check sum", (await Assert.ThrowsAsync<StoreRefusedException>(OpenAsync)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BackupAndExport_OfClubsRules_HoldAllOfThem()
    {
        await FillAsync();
        using var lines = new MemoryStream();
        await using (var store = await OpenAsync())
        {
            await store.BackupAsync(scratch.File("copy.db"), Ct);
            await store.ExportAsync(lines, Ct);
        }

        var text = Encoding.UTF8.GetString(lines.ToArray());
        foreach (var (collection, count) in new[] { ("editions", 6), ("layers", 6), ("audit", 6), ("proposals", 2), ("tips", 2), ("teaching", 2), ("unheard", 1) })
        {
            Assert.Equal(count, text.Split('\n').Count(l => l.StartsWith($$"""{"in":"{{collection}}","document":{""", StringComparison.Ordinal)));
        }

        Assert.Contains("a club's own rules", text, StringComparison.Ordinal);
        await using var copy = await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.File("copy.db") }, Ct);
        Same.Assert(EditionOf(3), await copy.FindEditionAsync(Twelve, 3, Ct));
    }

    private async Task FillAsync()
    {
        await using var store = await OpenAsync();
        foreach (var club in new[] { "12", "13" })
        {
            for (var number = 1; number <= 3; number++)
            {
                var act = Act(EditionOf(number, club));
                await store.SaveTeachingAsync(
                    number == 1 ? act with { Proposal = ProposalOf("p1", club), Tip = TipOf("t1", club), Settings = SettingsOf(club), Club = new ClubId(club) } : act, Ct);
            }
        }

        await store.SaveAsync(Sample.Opened("a", "12/1").Next().Saying() with { Unheard = Unheard("brr") }, Ct);
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
