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
    private const int Rehearsals = 200;

    private static readonly LocalDate First = new(2021, 5, 1);
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 12, 0, 0, TimeSpan.Zero);
    private readonly string folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
    private readonly DateTimeZone zone = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];
    private KnowledgeBase rules = null!;
    private BikeProfile bike = null!;
    private LocalDate today;
    private LiteShedStore store = null!;
    private int saved;

    /// <summary>How long the bike has been ridden, four days of seven; 0: since yesterday. Five years are more than is kept day by day.</summary>
    [Params(0, 1, 5)]
    public int Years { get; set; }

    [GlobalSetup]
    public async Task Setup()
    {
        rules = ClubRules.Load(1);
        bike = Fitting.Set(BikeProfile.New(new BikeId("bike"), new MemberId("rider")), First, First, Noon, "told").Must;
        today = First.PlusDays(1).PlusYears(Years);
        var tasks = rules.Service.Values.Where(r => !r.BeforeEachRide).Select(r => r.Id).ToImmutableArray();
        for (var day = First; day < today; day = day.PlusDays(1))
        {
            var since = Period.DaysBetween(First, day);
            if (since % 7 < 4) bike = Ride(day);
            // A task every third day: after a quarter of a year each was done, and after two and a half years the oldest entries make room.
            if (since > 0 && since % 3 == 0) bike = bike with { Done = DoneLog.Add(bike.Done, new ServiceDone(tasks[since / 3 % tasks.Length], day, Noon, "told", null), day, First).Must.All };
        }

        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "plan.db") }, CancellationToken.None);
        // So that the first line is not that of code which is still being compiled.
        for (var i = 0; i < Rehearsals; i++) EntryAndPlan();
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
