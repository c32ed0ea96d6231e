using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using LiteDB;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Reminding;

/// <summary>Finding the riders who are due among all that are kept, by the index; beside it every rider read and looked at. The same number due of ever more kept, then ever more due of as many kept.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 3, runs: 20)]
public class DueLookup
{
    /// <summary>Looked up so often before it is measured, so that the first line is not that of code which is still being compiled.</summary>
    private const int Rehearsals = 100;

    private static readonly Dictionary<KeptRiders, string> Made = [];
    private LiteShedStore? store;
    private LiteDatabase? file;

    public static IEnumerable<KeptRiders> Clubs =>
        [new(1_000, 100), new(100_000, 100), new(1_000_000, 100), new(100_000, 10), new(100_000, 1_000)];

    [ParamsSource(nameof(Clubs))]
    public KeptRiders Due { get; set; } = null!;

    [GlobalSetup(Target = nameof(ByTheIndex))]
    public async Task SetupIndex()
    {
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = await MadeAsync() }, CancellationToken.None);
        for (var i = 0; i < Rehearsals; i++) await ByTheIndex();
    }

    [GlobalSetup(Target = nameof(EveryRider))]
    public async Task SetupScan() => file = new LiteDatabase(new ConnectionString { Filename = await MadeAsync(), ReadOnly = true });

    [GlobalCleanup]
    public async Task Cleanup()
    {
        if (store is not null) await store.DisposeAsync();
        file?.Dispose();
        (store, file) = (null, null);
    }

    /// <summary>Each that is found is read, its seal checked and mapped.</summary>
    [Benchmark]
    public async Task<int> ByTheIndex() => Expect((await store!.DueRidersAsync(KeptRiders.Now, 10_000, CancellationToken.None)).Length);

    /// <summary>Documents are read and one field is compared; nothing is checked or mapped.</summary>
    [Benchmark]
    public int EveryRider()
    {
        var now = KeptRiders.Now.ToUnixTimeMilliseconds();
        return Expect(file!.GetCollection("riders").FindAll().Count(d => d["nextLook"].AsInt64 <= now));
    }

    /// <summary>Both ways look at the same file.</summary>
    private async Task<string> MadeAsync()
    {
        if (Made.TryGetValue(Due, out var path)) return path;
        var folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        path = Path.Combine(folder, "shed.db");
        var bytes = await Due.MakeAsync(path);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"// {Due}: {bytes / 1024.0 / 1024.0:0.0} MiB"));
        return Made[Due] = path;
    }

    private int Expect(int found) => found == Due.Due ? found : throw new InvalidOperationException($"{found} are due.");
}
