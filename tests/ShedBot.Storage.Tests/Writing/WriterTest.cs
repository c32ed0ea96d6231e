using LiteDB;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage.Tests.Writing;

/// <summary>The writer tells the truth about what it did.</summary>
public sealed class WriterTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Do_FlushFails_TellsNobodyThatItIsDoneAndStops()
    {
        using var db = Lite.Make(scratch.Data);
        var log = new LogFile(StoreFiles.At(scratch.Data));
        // A flush through a closed handle fails, as one to a broken disk does.
        log.Dispose();
        var writer = new Writer(db, log, new StoreOptions { Path = scratch.Data });

        var ran = false;
        await Assert.ThrowsAsync<StoreStoppedException>(() => writer.DoAsync(d => d.GetCollection("x").Insert(new BsonDocument()), alone: false, Ct));
        await Assert.ThrowsAsync<StoreStoppedException>(() => writer.DoAsync(_ => ran = true, alone: false, Ct));
        Assert.False(ran);
        Assert.NotNull(writer.Stopped);
        await writer.EndAsync();
    }

    [Fact]
    public async Task Do_WorkFailsHalfway_KeepsNothingOfItAndGoesOn()
    {
        using var db = Lite.Make(scratch.Data);
        using var log = new LogFile(StoreFiles.At(scratch.Data));
        var writer = new Writer(db, log, new StoreOptions { Path = scratch.Data });

        await Assert.ThrowsAsync<FormatException>(() => writer.DoAsync(
            d =>
            {
                d.GetCollection("x").Insert(new BsonDocument { ["_id"] = 1 });
                throw new FormatException();
            },
            alone: false, Ct));
        await writer.DoAsync(d => d.GetCollection("x").Insert(new BsonDocument { ["_id"] = 2 }), alone: false, Ct);
        await writer.EndAsync();

        Assert.Equal([2], db.GetCollection("x").FindAll().Select(d => d["_id"].AsInt32).ToList());
    }

    [Fact]
    public async Task Save_CancelledBeforeItBegins_WritesNothing()
    {
        await using var store = await OpenAsync();
        var turn = Sample.Opened().Next().Saying("word");

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => store.SaveAsync(turn, new CancellationToken(canceled: true)));

        Assert.Null(await store.FindCaseAsync(turn.Case.Id, Ct));
    }

    [Fact]
    public async Task Save_LogGrowsOverTheLimit_IsPutAwayAndTheFlushStillReachesTheLog()
    {
        var options = new StoreOptions { Path = scratch.Data, CheckpointBytes = 1 << 20 };
        await using var store = await LiteShedStore.OpenAsync(options, Ct);
        var most = 0L;
        var shrank = 0;
        var last = 0L;
        for (var c = Sample.Opened().Next(); c.Version < 120; c = c.Next(new string('w', 400)))
        {
            await store.SaveAsync(c.Saying("word"), Ct);
            var length = store.Health().LogBytes;
            // Our handle and the name must stay the same file, or the flush would go nowhere.
            Assert.True(length == 0 || length == new FileInfo(scratch.File("shed-log.db")).Length);
            most = Math.Max(most, length);
            shrank += length < last ? 1 : 0;
            last = length;
        }

        Assert.True(shrank > 1, $"put away {shrank} times");
        Assert.InRange(most, 1 << 19, 3 << 20);
        Assert.Contains("word", System.Text.Encoding.UTF8.GetString(File.ReadAllBytes(scratch.Data)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dispose_WithSavesInTheLog_PutsThemAwayAndLeavesTheDataFileAlone()
    {
        var store = await OpenAsync();
        await store.SaveAsync(Sample.Opened().Next().Saying("word"), Ct);
        Assert.True(store.Health().LogBytes > 0);
        await store.DisposeAsync();

        Assert.Equal(["shed.db"], scratch.Contents().Keys);
        await Assert.ThrowsAsync<ObjectDisposedException>(() => store.SaveAsync(Sample.Opened("other").Next().Saying(), Ct));
        await Assert.ThrowsAsync<ObjectDisposedException>(() => store.FindCaseAsync(Sample.Opened().Id, Ct));
        await store.DisposeAsync();
    }

    [Fact]
    public async Task Do_WhileAReaderStaysInside_GoesOnAndPutsTheLogAwayLater()
    {
        using var db = Lite.Make(scratch.Data);
        db.Timeout = TimeSpan.FromSeconds(1);
        db.GetCollection("x").Insert(new BsonDocument { ["_id"] = 0 });
        using var log = new LogFile(StoreFiles.At(scratch.Data));
        var writer = new Writer(db, log, new StoreOptions { Path = scratch.Data, CheckpointBytes = 1 << 20, LogAlarmBytes = 2 << 20 });
        using var inside = new ManualResetEventSlim();
        using var leave = new ManualResetEventSlim();
        // On a thread of its own: LiteDB ties a read to the thread it began on.
        var reader = new Thread(() =>
        {
            using var documents = db.GetCollection("x").FindAll().GetEnumerator();
            documents.MoveNext();
            inside.Set();
            leave.Wait();
        });
        reader.Start();
        inside.Wait();
        for (var n = 1; log.Length <= 2 << 20; n++)
        {
            var document = new BsonDocument { ["_id"] = n, ["text"] = new string('w', 10_000) };
            await writer.DoAsync(d => d.GetCollection("x").Insert(document), alone: false, Ct);
        }

        leave.Set();
        reader.Join();
        await writer.EndAsync();
        Assert.Null(writer.Stopped);
        Assert.Equal(0, log.Length);
    }

    [Fact]
    public async Task Open_OptionsOutOfRange_Throws()
    {
        foreach (var options in new[]
        {
            new StoreOptions { Path = " " },
            new StoreOptions { Path = scratch.Data, CheckpointBytes = 1000 },
            new StoreOptions { Path = scratch.Data, CheckpointBytes = 65L << 20, LogAlarmBytes = 200L << 20 },
            new StoreOptions { Path = scratch.Data, LogAlarmBytes = 7L << 20 },
        })
        {
            await Assert.ThrowsAnyAsync<ArgumentException>(() => LiteShedStore.OpenAsync(options, Ct));
        }
    }

    [Fact]
    public void LiteDB_FieldOrderThroughTheFile_IsKept()
    {
        // The check sum is taken over the fields in their order.
        using var db = Lite.Make(scratch.Data);
        db.GetCollection("x").Insert(Seal.Close(new BsonDocument { ["zebra"] = 1, ["_id"] = 1, ["apple"] = "" }));
        Seal.Check("x", db.GetCollection("x").FindById(1));
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
