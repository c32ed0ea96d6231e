using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using LiteDB;
using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Reminding;

/// <summary>Finding the hundred riders who are due among all that are kept, by the index; beside it every rider read and looked at.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 20, runs: 20)]
public class DueLookup
{
    private const int Due = 100;

    private static readonly DateTimeOffset Now = new(2026, 5, 2, 18, 0, 0, TimeSpan.Zero);

    private readonly string folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
    private LiteShedStore store = null!;
    private LiteDatabase copy = null!;

    /// <summary>How many riders are kept.</summary>
    [Params(1_000, 100_000)]
    public int Riders { get; set; }

    [GlobalSetup]
    public async Task Setup()
    {
        var path = Path.Combine(folder, "shed.db");
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path, Durable = false }, CancellationToken.None);
        await Parallel.ForEachAsync(
            Enumerable.Range(0, Riders), new ParallelOptions { MaxDegreeOfParallelism = 64 }, async (i, ct) => await store.SaveRiderAsync(RiderAt(i), [], [], ct));
        await store.DisposeAsync();
        File.Copy(path, Path.Combine(folder, "copy.db"));
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, CancellationToken.None);
        copy = new LiteDatabase(Path.Combine(folder, "copy.db"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"// {Riders} riders: {new FileInfo(path).Length / 1024.0 / 1024.0:0.0} MiB"));
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await store.DisposeAsync();
        copy.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Benchmark]
    public async Task<int> ByTheIndex() => Expect((await store.DueRidersAsync(Now, 10_000, CancellationToken.None)).Length);

    /// <summary>Documents are read and one field is compared; nothing is checked or mapped.</summary>
    [Benchmark]
    public int EveryRider() => Expect(copy.GetCollection("riders").FindAll().Count(d => d["nextLook"].AsInt64 <= Now.ToUnixTimeMilliseconds()));

    private static int Expect(int found) => found == Due ? found : throw new InvalidOperationException($"{found} are due.");

    /// <summary>With thirty due dates told, as after some months.</summary>
    private static Rider RiderAt(int i) => Rider.New(new MemberId($"club-{i % 100}/{i}")) with
    {
        Consent = Consent.Given,
        Told = [.. Enumerable.Range(0, 30).Select(t => new Told($"club-{i % 100}/{i}/bike|grease-bar-ball-cam|grease-bar-ball-cam@2026-04-{t + 1:D2}", new LocalDate(2026, 4, 1).PlusDays(t)))],
        NextLook = i < Due ? Now.AddMinutes(-i) : Now.AddMinutes(i),
        Version = 1,
    };
}
