using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using NodaTime;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Planning;

/// <summary>What a logged ride costs: the entry, the whole plan worked out anew with the club's own tasks, and keeping the bike.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 50, runs: 300)]
public class PlanAfterARide
{
    private static readonly LocalDate First = new(2025, 5, 1);
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);
    private readonly string folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
    private readonly DateTimeZone zone = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];
    private KnowledgeBase rules = null!;
    private BikeProfile bike = null!;
    private LocalDate today;
    private LiteShedStore store = null!;
    private int saved;

    /// <summary>How many days were ridden before; 400 is all that is kept.</summary>
    [Params(10, 100, 400)]
    public int RiddenDays { get; set; }

    [GlobalSetup]
    public async Task Setup()
    {
        rules = ClubRules.Load(1);
        bike = Fitting.Set(BikeProfile.New(new BikeId("bike"), new MemberId("rider")), First, First, Noon, "told").Must;
        for (var i = 0; i < RiddenDays; i++) bike = Ride(First.PlusDays(i));
        today = First.PlusDays(RiddenDays);
        var tasks = rules.Service.Keys.ToImmutableArray();
        bike = bike with { Done = [.. tasks.Select((t, i) => new ServiceDone(t, today.PlusDays(-1 - (i % RiddenDays)), Noon, "told", null))] };
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "plan.db") }, CancellationToken.None);
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await store.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Benchmark(Baseline = true)]
    public BikeProfile Entry() => Ride(today);

    [Benchmark]
    public ImmutableArray<PlanItem> EntryAndPlan() => ServicePlan.Of(Ride(today), rules, today, zone);

    [Benchmark]
    public Task EntryAndKeeping()
    {
        saved++;
        return store.SaveBikeAsync(Ride(today) with { Id = new BikeId($"bike-{saved}"), Version = 1 }, CancellationToken.None);
    }

    private BikeProfile Ride(LocalDate day) =>
        bike with { Riding = bike.Riding.Log(new RiddenDay(day, 10 + (day.Day % 7), null, (Weather)(day.Day % 3)), day, null, Noon).Must };
}
