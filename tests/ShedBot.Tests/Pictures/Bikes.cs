using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Service;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Tests.Pictures;

/// <summary>Invented bikes under the shipped rules, as they stand on 20 March 2026.</summary>
internal static class Bikes
{
    public static readonly LocalDate Today = new(2026, 3, 20);

    private static readonly DateTimeOffset Noon = new(2026, 3, 20, 12, 0, 0, TimeSpan.Zero);

    private static readonly Lazy<KnowledgeBase> Rules = new(() =>
        KnowledgeLoader.Load(KnowledgeFolder.Read(Repository.Knowledge)).Knowledge ?? throw new InvalidOperationException("The shipped rules cannot be read."));

    public static BikeProfile Empty { get; } = BikeProfile.New(new BikeId("b"), new MemberId("m"));

    /// <summary>Fitted the day before yesterday, ridden once.</summary>
    public static BikeProfile New => Rode(Fitted(Empty, Today.PlusDays(-2)), Today.PlusDays(-1));

    /// <summary>Three weeks of riding after the fitting, and nothing done.</summary>
    public static BikeProfile RunningIn => Enumerable.Range(0, 15).Aggregate(Fitted(Empty, Today.PlusDays(-21)), (b, i) => Rode(b, Today.PlusDays(-20 + (i * 4 / 3))));

    /// <summary>Ridden two days of three but for the winter, each task done now and then, the last ones before the winter.</summary>
    public static BikeProfile YearOld
    {
        get
        {
            var (bike, winter, spring) = (Fitted(Empty, Today.PlusYears(-1)), new LocalDate(2025, 12, 8), new LocalDate(2026, 2, 20));
            for (var day = Today.PlusYears(-1); day < Today; day = day.PlusDays(1))
            {
                if ((day < winter || day >= spring) && day.DayOfYear % 3 != 0) bike = Rode(bike, day);
            }

            bike = bike with { Riding = bike.Riding.Break(winter, spring, Today, Noon).Must };
            var tasks = Rules.Value.Service.Values.Where(r => !r.BeforeEachRide).ToList();
            for (var i = 0; i < tasks.Count; i++)
            {
                for (var day = winter.PlusDays(-3 - (i % 5)); day > Today.PlusYears(-1).PlusDays(30); day = day.PlusDays(-20 - (4 * i))) bike = Did(bike, tasks[i].Id, day);
                if (i % 3 != 0) bike = Did(bike, tasks[i].Id, spring.PlusDays(3 + (i % 20)));
            }

            return bike;
        }
    }

    public static BikeProfile Resting => RunningIn with { Riding = RunningIn.Riding.Break(Today, null, Today, Noon).Must };

    /// <summary>Not ridden much: what was done last and what comes next lies further away than is shown.</summary>
    public static BikeProfile LongAgo
    {
        get
        {
            var bike = Fitted(Empty, Today.PlusDays(-390));
            for (var i = 0; i < 13; i++) bike = Rode(bike, Today.PlusDays(-385 + (i * 30)));
            return Rules.Value.Service.Values.Where(r => !r.BeforeEachRide)
                .Aggregate(bike, (b, r) => Did(b, r.Id, Today.PlusDays(r.Id == "fuel-line" ? -300 : -150)));
        }
    }

    public static Timeline Lay(BikeProfile bike) => Timelines.Of(bike, Rules.Value, Today, DateTimeZone.Utc);

    public static BikeProfile Did(BikeProfile bike, string task, LocalDate day) =>
        bike with { Done = bike.Done.Add(new ServiceDone(task, day, Noon, "told", null)) };

    private static BikeProfile Fitted(BikeProfile bike, LocalDate day) => Fitting.Set(bike, day, day, Noon, "told").Must;

    private static BikeProfile Rode(BikeProfile bike, LocalDate day) =>
        bike with { Riding = bike.Riding.Log(new RiddenDay(day, 10 + (day.Day % 4), null, Weather.Dry), day, null, Noon).Must };
}
