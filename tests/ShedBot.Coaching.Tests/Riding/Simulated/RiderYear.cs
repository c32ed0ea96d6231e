using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding.Simulated;

/// <summary>A year and a half of one invented rider: every ride there was, and the log as it stood on any evening.</summary>
internal sealed class RiderYear
{
    public const int Days = 540;

    public static readonly LocalDate First = new(2025, 5, 1);

    private static readonly DateTimeOffset Noon = new(2025, 5, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly Habit habit;

    public RiderYear(Habit habit, int seed)
    {
        this.habit = habit;
        var random = new Random(seed);
        var rides = ImmutableArray.CreateBuilder<RiddenDay>();
        var wet = false;
        for (var i = 0; i < Days; i++)
        {
            var day = First.PlusDays(i);
            if (i % 7 == 0) wet = random.NextDouble() < habit.WetWeeks;
            var rides1 = random.NextDouble() < habit.Chance(i, (int)day.DayOfWeek - 1, wet);
            var km = Math.Round(3 + (14 * random.NextDouble() * random.NextDouble() * 2), 1);
            if (rides1 && !habit.Rests(day)) rides.Add(new RiddenDay(day, km, null, wet ? Weather.Wet : Weather.Dry));
        }

        Rides = rides.ToImmutable();
    }

    public ImmutableArray<RiddenDay> Rides { get; }

    /// <summary>The log on the evening of a day, entered ride by ride.</summary>
    public RidingLog LogOn(LocalDate evening)
    {
        var log = habit.StatedDays is { } days ? RidingLog.None.StatePace(new StatedPace(days, null, null, First), Noon).Must : RidingLog.None;
        foreach (var ride in Rides.TakeWhile(r => r.Day <= evening)) log = log.Log(ride, ride.Day, null, Noon).Must;
        if (!habit.WinterTold) return log;
        for (var day = First; day <= evening; day = day.PlusDays(1))
        {
            if (habit.Rests(day) && !habit.Rests(day.PlusDays(-1))) log = log.Break(day, new LocalDate(day.Year + 1, 3, 1), day, Noon).Must;
        }

        return log;
    }

    /// <returns>The day on which so much more will have been ridden after an evening, or null when the year and a half is too short for it.</returns>
    public LocalDate? Truly(LocalDate evening, double need, Func<RiddenDay, double> amount)
    {
        foreach (var ride in Rides.Where(r => r.Day > evening))
        {
            need -= amount(ride);
            if (need <= 1e-9) return ride.Day;
        }

        return null;
    }
}
