using System.Globalization;
using LiteDB;
using NodaTime;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;
using ShedBot.Storage;
using ShedBot.Storage.Documents;

namespace ShedBot.Benchmarks.Keeping;

/// <summary>
/// How the data file grows with the years: invented riders who ride four days a week and do on Sundays what is due, entry by entry as the logbook makes
/// them, with and without reminders.
/// </summary>
internal static class Growth
{
    private const int Bikes = 10, Years = 3, HalfYear = 182, Seed = 1;

    private static readonly LocalDate First = new(2026, 3, 1);
    private static readonly Ways Ways = new("", "", "", "", "", "", "", "", "");

    public static async Task PrintAsync()
    {
        var rules = ClubRules.Load(1);
        Console.WriteLine("| reminders | bike-years each | file a bike | file a bike-year | document of a bike | of a rider | days kept singly |");
        Console.WriteLine("| --- | --: | --: | --: | --: | --: | --: |");
        foreach (var reminded in new[] { false, true }) await LiveAsync(rules, reminded);
    }

    private static async Task LiveAsync(KnowledgeBase rules, bool reminded)
    {
        var folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
        var path = Path.Combine(folder, "growth.db");
        var random = new Random(Seed);
        var store = await OpenAsync(path);
        await store.DisposeAsync();
        var empty = new FileInfo(path).Length;
        store = await OpenAsync(path);
        for (var day = 0; day <= Years * 2 * HalfYear; day++)
        {
            if (day > 0 && day % HalfYear == 0)
            {
                // Closed first: that puts the log away into the file.
                await store.DisposeAsync();
                Print(path, empty, day, reminded);
                store = await OpenAsync(path);
            }

            await DayAsync(store, rules, First.PlusDays(day), random, reminded, first: day == 0);
        }

        await store.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private static Task<LiteShedStore> OpenAsync(string path) => LiteShedStore.OpenAsync(new StoreOptions { Path = path, Durable = false }, CancellationToken.None);

    private static async Task DayAsync(LiteShedStore store, KnowledgeBase rules, LocalDate day, Random random, bool reminded, bool first)
    {
        var coach = new Coach(rules, Listener.For(rules), new CoachOptions());
        var coaches = new OneCoach(() => coach);
        using var logbook = new BikeDesk(store, store, coaches);
        using var reminders = new RiderDesk(store, store, coaches, (_, _) => ValueTask.FromResult("Etc/UTC"));
        var noon = day.AtMidnight().PlusHours(12).InUtc().ToDateTimeOffset();
        for (var i = 0; i < Bikes; i++)
        {
            var speaker = new Speaker(new MemberId($"club/{i}"), Units.Metric, "Etc/UTC", Ways);
            if (first)
            {
                await EnterAsync(new FittedEntry(day), 0);
                if (reminded) await reminders.HandleAsync(speaker.Member, new RemindMe(null), noon, CancellationToken.None);
            }

            if (random.Next(7) < 4) await EnterAsync(new RideEntry(new RiddenDay(day, 5 + random.Next(10), null, random.Next(4) == 0 ? Weather.Wet : Weather.Dry)), 1);
            if (day.DayOfWeek != IsoDayOfWeek.Sunday) continue;
            var due = ServicePlan.Of(await logbook.BikeAsync(speaker.Member, CancellationToken.None), rules, day, DateTimeZone.Utc)
                .Where(t => t.State is DueState.Due or DueState.Overdue).Select(t => t.Rule.Id).ToList();
            for (var t = 0; t < due.Count; t++) await EnterAsync(new DoneEntry(due[t], day), 2 + t);

            Task<BikeAnswer> EnterAsync(BikeEntry entry, int number) =>
                logbook.HandleAsync(speaker, string.Create(CultureInfo.InvariantCulture, $"10{day:yyyyMMdd}{i:D4}{number:D4}"), entry, noon, CancellationToken.None);
        }

        if (!reminded) return;
        foreach (var told in (await reminders.RoundAsync(noon.AddHours(6), CancellationToken.None)).Told)
        {
            foreach (var message in await store.UnsaidAsync(Decision.PlaceOf(told), 10, CancellationToken.None)) await store.MarkSaidAsync(message.Id, CancellationToken.None);
        }
    }

    private static void Print(string path, long empty, int day, bool reminded)
    {
        using var db = new LiteDatabase(new ConnectionString { Filename = path, ReadOnly = true });
        var bikes = db.GetCollection(BikeDocument.Collection).FindAll().ToList();
        var riders = db.GetCollection(RiderDocument.Collection).FindAll().ToList();
        var (years, file) = (day / (2.0 * HalfYear), (new FileInfo(path).Length - empty) / 1024.0 / Bikes);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {(reminded ? "yes" : "no")} | {years:0.0} | {file:0.0} KiB | {file / years:0.0} KiB | {Size(bikes):0.0} KiB | {Size(riders):0.0} KiB | {bikes.Average(b => BikeDocument.FromBson(b).Riding.Days.Length):0} |"));
    }

    private static double Size(List<BsonDocument> documents) => documents.Count == 0 ? 0 : documents.Average(d => BsonSerializer.Serialize(d).Length) / 1024.0;
}
