using System.Text;
using LiteDB;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>What cannot be used is refused in plain words, and no byte of it is touched.</summary>
public sealed class RefusalTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_DirectoryMissing_SaysToMakeIt()
    {
        var path = scratch.File("not-there/shed.db");
        var refusal = await RefusalOf(path);

        Assert.Equal(RefusalCodes.NoDirectory, refusal.Code);
        Assert.Contains("Make it", refusal.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.File("not-there")));
    }

    [Fact]
    public async Task Open_DirectoryThatTakesNoFiles_SaysSo()
    {
        // The kernel's own directory takes no new files, whoever asks.
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        Assert.Equal(RefusalCodes.CannotWrite, (await RefusalOf("/proc/shed.db")).Code);
    }

    [Theory]
    [InlineData("a letter to the club")]
    [InlineData("")]
    public async Task Open_FileThatIsNotOurs_IsRefusedUntouched(string start)
    {
        File.WriteAllBytes(scratch.Data, [.. Encoding.UTF8.GetBytes(start), .. Enumerable.Range(0, 20_000).Select(n => (byte)(n * 7))]);
        await AssertRefusedUntouched(RefusalCodes.NotOurFile);
    }

    [Fact]
    public async Task Open_LiteDbFileOfAnotherProgram_IsRefusedUntouched()
    {
        using (var db = new LiteDatabase(scratch.Data))
        {
            db.GetCollection("cases").Insert(new BsonDocument { ["_id"] = 1 });
        }

        await AssertRefusedUntouched(RefusalCodes.NotOurFile);
    }

    [Fact]
    public async Task Open_NewerLayout_IsRefusedUntouched()
    {
        await MakeStoreAsync();
        using (var db = Lite.Open(scratch.Data))
        {
            About.Write(db, StoreSchema.Ours.Current + 1);
            db.Checkpoint();
        }

        var refusal = await AssertRefusedUntouched(RefusalCodes.NewerSchema);
        Assert.Contains("newer ShedBot", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shed-temp.db")]
    [InlineData("shed-backup.db")]
    [InlineData("shed-backup-2.db")]
    public async Task Open_StrayFileOfARebuild_IsNamedAndLeftAlone(string stray)
    {
        await MakeStoreAsync();
        File.WriteAllText(scratch.File(stray), "what is left");

        var refusal = await AssertRefusedUntouched(RefusalCodes.StrayFiles);
        Assert.Contains(stray, refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Open_LogWithoutItsDataFile_IsRefusedUntouched(bool emptyDataFile)
    {
        File.WriteAllBytes(scratch.File("shed-log.db"), new byte[8192]);
        if (emptyDataFile)
        {
            File.WriteAllBytes(scratch.Data, []);
        }

        await AssertRefusedUntouched(RefusalCodes.LogWithoutData);
    }

    [Fact]
    public async Task Open_SecondTimeInOneProcess_IsRefused()
    {
        await using var first = await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
        Assert.Equal(RefusalCodes.InUse, (await RefusalOf(scratch.Data)).Code);
    }

    [Fact]
    public async Task Open_SecondTimeThroughALink_IsRefused()
    {
        await using var first = await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
        File.CreateSymbolicLink(scratch.File("other.db"), scratch.Data);

        Assert.Equal(RefusalCodes.InUse, (await RefusalOf(scratch.File("other.db"))).Code);
    }

    [Fact]
    public async Task Open_LeftoversOfACreationThatWasKilled_StartsAnew()
    {
        File.WriteAllBytes(scratch.File("shed-fresh.db"), new byte[100]);
        File.WriteAllBytes(scratch.File("shed-fresh-log.db"), new byte[100]);
        File.WriteAllBytes(scratch.Data, []);
        await MakeStoreAsync();

        Assert.Equal(["shed.db"], scratch.Contents().Keys);
    }

    private async Task<StoreRefusedException> AssertRefusedUntouched(string code)
    {
        var before = scratch.Contents();
        var refusal = await RefusalOf(scratch.Data);

        Assert.Equal(code, refusal.Code);
        Assert.Equal(before, scratch.Contents());
        return refusal;
    }

    private async Task MakeStoreAsync() => await (await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct)).DisposeAsync();

    private static Task<StoreRefusedException> RefusalOf(string path) =>
        Assert.ThrowsAsync<StoreRefusedException>(() => LiteShedStore.OpenAsync(new StoreOptions { Path = path }, Ct));
}
