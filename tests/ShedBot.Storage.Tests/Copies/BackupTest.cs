using System.Text.Json;

namespace ShedBot.Storage.Tests.Copies;

/// <summary>Copies are taken while the store is in use, and read back.</summary>
public sealed class BackupTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Backup_WhileMembersSave_HoldsEverythingAcknowledgedBeforeAndOpensAsAStore()
    {
        await using var store = await OpenAsync(scratch.Data);
        using var stop = new CancellationTokenSource();
        var saved = 0;
        var saving = Task.Run(async () =>
        {
            for (var c = Sample.Opened().Next(); !stop.IsCancellationRequested; c = c.Next())
            {
                await store.SaveAsync(c.Saying("word"), Ct);
                Volatile.Write(ref saved, c.Version);
            }
        });

        for (var n = 0; n < 5; n++)
        {
            await Task.Delay(20);
            var before = Volatile.Read(ref saved);
            var report = await store.BackupAsync(scratch.File($"copy-{n}.db"), Ct);
            Assert.True(report.IsSound);

            await using var copy = await OpenAsync(scratch.File($"copy-{n}.db"));
            var c = await copy.FindCaseAsync(Sample.Opened().Id, Ct);
            Assert.True((c?.Version ?? 0) >= before, $"{c?.Version} of {before}");
            Assert.Equal(c?.Version ?? 0, copy.Integrity.Counts["outbox"]);
        }

        await stop.CancelAsync();
        await saving;
        Assert.True(saved > 5);
    }

    [Fact]
    public async Task Backup_FileThatIsThere_IsRefusedAndLeftAlone()
    {
        await using var store = await OpenAsync(scratch.Data);
        File.WriteAllText(scratch.File("copy.db"), "last week's");

        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(() => store.BackupAsync(scratch.File("copy.db"), Ct));

        Assert.Equal(RefusalCodes.TargetExists, refusal.Code);
        Assert.Equal("last week's", File.ReadAllText(scratch.File("copy.db")));
    }

    [Fact]
    public async Task Backup_DirectoryMissing_IsRefusedAndTheStoreGoesOn()
    {
        await using var store = await OpenAsync(scratch.Data);

        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(() => store.BackupAsync(scratch.File("none/copy.db"), Ct));
        await store.SaveAsync(Sample.Opened().Next().Saying("still here"), Ct);

        Assert.Equal(RefusalCodes.CannotWrite, refusal.Code);
    }

    [Fact]
    public async Task Export_MoreThanOneRound_IsALineOfJsonForEachDocument()
    {
        await using var store = await OpenAsync(scratch.Data);
        for (var n = 0; n < 600; n++)
        {
            await store.SaveAsync(Sample.Opened($"case-{n}").Next().Saying("Straße 🚲"), Ct);
        }

        using var stream = new MemoryStream();
        var count = await store.ExportAsync(stream, Ct);

        var lines = System.Text.Encoding.UTF8.GetString(stream.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var documents = lines.Select(l => JsonDocument.Parse(l).RootElement).ToList();
        Assert.Equal(1 + 600 + 600, count);
        Assert.Equal(count, documents.Count);
        Assert.Equal(600, documents.Where(d => d.GetProperty("in").GetString() == "cases")
            .DistinctBy(d => d.GetProperty("document").GetProperty("_id").GetString()).Count());
        var message = documents.First(d => d.GetProperty("in").GetString() == "outbox").GetProperty("document");
        Assert.Equal("Straße 🚲", JsonDocument.Parse(message.GetProperty("card").GetString()!).RootElement
            .GetProperty("blocks")[0].GetProperty("text").GetString());
    }

    [Fact]
    public async Task Export_ClubsAndRooms_AreLinesLikeTheOthers()
    {
        await using var store = await OpenAsync(scratch.Data);
        await store.SaveClubAsync(Sample.ClubOf("12"), Ct);
        await store.SaveRoomAsync(Sample.RoomOf("12", "wren", "place-1"), [], Ct);

        using var stream = new MemoryStream();
        Assert.Equal(3, await store.ExportAsync(stream, Ct));

        var lines = System.Text.Encoding.UTF8.GetString(stream.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => JsonDocument.Parse(l).RootElement)
            .ToDictionary(l => l.GetProperty("in").GetString()!, l => l.GetProperty("document"));
        Assert.Equal("Europe/Lisbon", lines["clubs"].GetProperty("timeZone").GetString());
        Assert.Equal("12/wren", lines["rooms"].GetProperty("member").GetString());
    }

    private static Task<LiteShedStore> OpenAsync(string path) => LiteShedStore.OpenAsync(new StoreOptions { Path = path }, Ct);
}
