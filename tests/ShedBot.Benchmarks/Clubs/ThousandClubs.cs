using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using ShedBot.Benchmarks.Deciding;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Understanding;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Clubs;

/// <summary>Turns of many clubs, each with rules of its own from a data file, by how many clubs' coaches are kept ready; beside them one club with the project's rules alone.</summary>
internal static class ThousandClubs
{
    private const int Seed = 1, Warmups = 60, Busy = 50;

    public static async Task PrintAsync(int clubs, int turns)
    {
        var folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
        var under = RuleBase.Of(ClubRules.Files);
        var ground = new Ground(under, new Coach(under.Knowledge!, Listener.For(under.Knowledge!), new CoachOptions()));
        var recorded = RecordedTurns.Of(ground.Coach, turns, Seed);
        await using (var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "clubs.db"), Durable = false }, CancellationToken.None))
        {
            for (var i = 1; i <= clubs; i++) await PublishAsync(store, Club(i), ClubEditions.Cause(i));
            var (any, few) = (new Random(Seed), new Random(Seed));
            Console.WriteLine("| clubs with rules of their own | kept ready | who asks | turns | loaded anew | p50 | p99 | processor time a turn, mean | kept by the collector |");
            Console.WriteLine("| --: | --: | --- | --: | --: | --: | --: | --: | --: |");
            await TellAsync("0", store, ground, recorded, 64, "one club, the project's rules alone", _ => new ClubId("plain"), 0);
            await TellAsync("1", store, ground, recorded, 64, "that club", _ => Club(1), 1);
            await TellAsync($"{clubs:N0}", store, ground, recorded, 64, $"nine of ten turns {Busy} busy clubs, else any", _ => Club(1 + few.Next(few.Next(10) == 0 ? clubs : Busy)), Busy);
            await TellAsync($"{clubs:N0}", store, ground, recorded, 64, "any, all alike often", _ => Club(1 + any.Next(clubs)), 0);
            await TellAsync($"{clubs:N0}", store, ground, recorded, clubs, "any, all alike often", _ => Club(1 + any.Next(clubs)), clubs);
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <param name="first">So many clubs have asked before it is measured.</param>
    private static async Task TellAsync(string clubs, LiteShedStore store, Ground ground, ImmutableArray<RecordedTurn> turns, int most, string who, Func<int, ClubId> asks, int first)
    {
        using var process = Process.GetCurrentProcess();
        // What the last measuring kept may be let go of late, and would count for less than nothing here.
        GC.Collect();
        GC.WaitForPendingFinalizers();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var coaches = new ClubCoaches(store, () => ground, most);
        // Weakly, so that looking on keeps nobody.
        var met = new Dictionary<ClubId, WeakReference<Coach>>();
        for (var i = 1; i <= first; i++) met[Club(i)] = new WeakReference<Coach>(await coaches.OfAsync(Club(i), CancellationToken.None));
        for (var i = 0; i < Warmups; i++) await TakeAsync(coaches, asks(i), turns[i % turns.Length]);
        process.Refresh();
        var (taken, anew, spent) = (new double[turns.Length], 0, process.TotalProcessorTime);
        for (var i = 0; i < turns.Length; i++)
        {
            var (club, clock) = (asks(i), Stopwatch.GetTimestamp());
            var coach = await TakeAsync(coaches, club, turns[i]);
            taken[i] = Stopwatch.GetElapsedTime(clock).TotalMilliseconds;
            if (met.TryGetValue(club, out var last) && last.TryGetTarget(out var same) && ReferenceEquals(same, coach)) continue;
            anew++;
            met[club] = new WeakReference<Coach>(coach);
        }

        process.Refresh();
        var processor = (process.TotalProcessorTime - spent).TotalMilliseconds / turns.Length;
        Array.Sort(taken);
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {clubs} | {most:N0} | {who} | {turns.Length:N0} | {anew:N0} | {At(taken, 50):0.0} ms | {At(taken, 99):0.0} ms | {processor:0.0} ms | {kept / 1048576.0:0.0} MiB |"));
        GC.KeepAlive(coaches);
    }

    /// <summary>From being asked for a club's coach to what it says.</summary>
    private static async Task<Coach> TakeAsync(ClubCoaches coaches, ClubId club, RecordedTurn turn)
    {
        var coach = await coaches.OfAsync(club, CancellationToken.None);
        // As if the case had been begun under these rules: that they have changed is told once a case, and is not what is measured.
        coach.Take(turn.Before with { KnowledgeVersion = coach.Knowledge.Version }, turn.Bike, turn.Incoming, RecordedTurns.Noon);
        return coach;
    }

    private static Task PublishAsync(LiteShedStore store, ClubId club, Layer layer)
    {
        var by = club.Member("moderator");
        var edition = new RulesEdition(club, 1, layer.As(1).Write(), "", "a cause", null, by, "A", "", RecordedTurns.Noon);
        return store.SaveTeachingAsync(
            new TeachingSaved(club, null, null, null, edition, [new AuditEntry(club, 0, by, "A", AuditAct.Published, "1", "published", RecordedTurns.Noon)], []), CancellationToken.None);
    }

    private static ClubId Club(int number) => new(string.Create(CultureInfo.InvariantCulture, $"club-{number}"));

    /// <summary>The nearest rank.</summary>
    private static double At(double[] ordered, int percent) => ordered[Math.Max(0, (int)Math.Ceiling(percent / 100.0 * ordered.Length) - 1)];
}
