using System.Diagnostics;

namespace ShedBot.Storage.Torture;

/// <summary>How long a whole turn (case, every third time the bike, two messages) takes to save, seen by the one who waits for it.</summary>
internal static class Measurement
{
    private const int WarmUp = 200;

    public static async Task<int> RunAsync(int saves)
    {
        foreach (var durable in new[] { true, false })
        {
            foreach (var members in new[] { 1, Script.Members })
            {
                await MeasureAsync(saves, durable, members);
            }
        }

        return 0;
    }

    private static async Task MeasureAsync(int saves, bool durable, int members)
    {
        var directory = Directory.CreateTempSubdirectory("shedbot-measure-").FullName;
        var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(directory, "shed.db"), Durable = durable }, default);
        await SaveAsync(store, members, 0, WarmUp);
        var whole = Stopwatch.StartNew();
        var times = await SaveAsync(store, members, WarmUp, WarmUp + (saves / members));
        var rate = times.Length / whole.Elapsed.TotalSeconds;
        await store.DisposeAsync();
        Directory.Delete(directory, recursive: true);
        Array.Sort(times);
        Console.WriteLine(
            $"{(durable ? "durable" : "quick")}, {members} at once: p50 {At(times, 0.5):F2} ms, p99 {At(times, 0.99):F2} ms, most {times[^1]:F2} ms, {rate:F0} turns/s");
    }

    private static async Task<double[]> SaveAsync(LiteShedStore store, int members, int from, int to)
    {
        var times = await Task.WhenAll(Enumerable.Range(0, members).Select(member => Task.Run(async () =>
        {
            var mine = new List<double>();
            for (var step = from; step < to; step++)
            {
                var turn = Script.Turn(member, step);
                var watch = Stopwatch.StartNew();
                await store.SaveAsync(turn, default);
                mine.Add(watch.Elapsed.TotalMilliseconds);
                foreach (var message in turn.Say)
                {
                    await store.MarkSaidAsync(message.Id, default);
                }
            }

            return mine;
        })));
        return [.. times.SelectMany(t => t)];
    }

    private static double At(double[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];
}
