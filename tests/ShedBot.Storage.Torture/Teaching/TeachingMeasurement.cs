using System.Diagnostics;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Torture.Teaching;

/// <summary>What a club's rules cost beside many other clubs': the question before every turn, reading an edition, publishing one, opening the store.</summary>
internal static class TeachingMeasurement
{
    private const int Asked = 20_000;

    /// <param name="bytes">Length of each layer.</param>
    public static async Task<int> RunAsync(int clubs, int editions, int bytes)
    {
        var directory = Directory.CreateTempSubdirectory("shedbot-measure-").FullName;
        var options = new StoreOptions { Path = Path.Combine(directory, "shed.db"), Durable = false };
        var layer = string.Concat(Enumerable.Repeat("- id: a-rule\n  author: Heron\n  asks: does the lever come back by itself?\n", (bytes / 70) + 1))[..bytes];
        await using (var store = await LiteShedStore.OpenAsync(options, default))
        {
            var publish = await TimesAsync(clubs * editions, n => store.SaveTeachingAsync(Publish(n % clubs, 1 + (n / clubs), layer), default));
            Tell("publish, quick", publish);
        }

        var opening = Stopwatch.StartNew();
        await using (var store = await LiteShedStore.OpenAsync(options with { Durable = true }, default))
        {
            Console.WriteLine($"open and read from end to end: {opening.Elapsed.TotalSeconds:F2} s, data {store.Health().DataBytes >> 20} MiB, working set {Environment.WorkingSet >> 20} MiB");
            Tell("newest edition", await TimesAsync(Asked, n => store.NewestEditionAsync(Lesson.Club(n * 7919 % clubs), default)));
            Tell("newest edition of a club without", await TimesAsync(Asked, n => store.NewestEditionAsync(Lesson.Club(clubs + (n % 1000)), default)));
            Tell("one edition with its layer", await TimesAsync(Asked / 10, n => store.FindEditionAsync(Lesson.Club(n * 7919 % clubs), editions, default)));
            Tell("list of editions", await TimesAsync(Asked / 10, n => store.EditionsAsync(Lesson.Club(n * 7919 % clubs), 100, default)));
            Tell("publish, durable", await TimesAsync(Math.Min(clubs, 500), n => store.SaveTeachingAsync(Publish(n, editions + 1, layer), default)));
            Tell("forget a member who published all", await TimesAsync(Math.Min(clubs, 20), n => store.ForgetMemberAsync(Lesson.Club(n).Member("heron"), default)));
        }

        Directory.Delete(directory, recursive: true);
        return 0;
    }

    private static TeachingSaved Publish(int club, int number, string layer)
    {
        var id = Lesson.Club(club);
        var edition = new RulesEdition(id, number, layer, "", "what changed", null, id.Member("heron"), "Heron", "2026.5", DateTimeOffset.UnixEpoch.AddMinutes(number));
        return new TeachingSaved(id, null, null, null, edition, [new AuditEntry(id, 0, edition.By, "Heron", AuditAct.Published, "", "", edition.At)], []);
    }

    private static async Task<double[]> TimesAsync(int count, Func<int, Task> what)
    {
        var times = new double[count];
        for (var n = 0; n < count; n++)
        {
            var watch = Stopwatch.StartNew();
            await what(n);
            times[n] = watch.Elapsed.TotalMilliseconds;
        }

        Array.Sort(times);
        return times;
    }

    private static void Tell(string what, double[] sorted) =>
        Console.WriteLine($"{what}: p50 {At(sorted, 0.5):F3} ms, p99 {At(sorted, 0.99):F3} ms, most {sorted[^1]:F2} ms ({sorted.Length} times)");

    private static double At(double[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];
}
