using System.Globalization;
using ShedBot.Benchmarks.Rules;

namespace ShedBot.Benchmarks.Loading;

/// <summary>How much memory loaded rules keep, measured by itself: the benchmark runner counts what is allocated, not what stays.</summary>
internal static class Kept
{
    public static void Print()
    {
        Console.WriteLine("| rules | kept by the collector | working set of the process |");
        Console.WriteLine("| --- | --: | --: |");
        var before = GC.GetTotalMemory(forceFullCollection: true);
        foreach (var times in new[] { 1, 10 })
        {
            var coach = ClubRules.CoachOf(times);
            var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| x {times}, {coach.Knowledge.Faults.Count} faults | {kept / 1048576.0:0.0} MiB | {Environment.WorkingSet / 1048576.0:0} MiB |"));
            GC.KeepAlive(coach);
        }

        var (each, spent) = ClubLayers.Thousand();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"1,000 clubs with a cause of their own keep {each:0} KiB each beside the shared base; {spent:0.0} ms each to load."));
    }
}
