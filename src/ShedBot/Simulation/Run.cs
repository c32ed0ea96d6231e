using System.Collections.Immutable;
using ShedBot.Coaching;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Turns;

namespace ShedBot.Simulation;

/// <summary>What to simulate.</summary>
/// <param name="Riders">How many; 1 or more.</param>
/// <param name="PerFault">True to give every fault of the rules its own equal share of riders, each with that fault alone.</param>
internal sealed record RunPlan(int Riders, int Seed, Habits Habits, RidersWanted Wanted, bool PerFault = false);

/// <summary>The same rider three times over: coached, by the fixed order of repairs, and by chance.</summary>
internal sealed record RiderRides(Ride Coached, Ride FixedOrder, Ride RandomOrder);

/// <summary>Sends riders through the coach and through what it is measured against.</summary>
internal static class Run
{
    /// <param name="progress">Told now and then how many riders are done.</param>
    /// <returns>By rider; the same plan and rules give the same, whatever the machine.</returns>
    /// <exception cref="NoSuchRiderException">The rules make such riders too rare to be met.</exception>
    public static ImmutableArray<RiderRides> All(Coach coach, CoachOptions options, RunPlan plan, Action<int>? progress, CancellationToken ct)
    {
        var rides = new RiderRides[plan.Riders];
        var done = 0;
        try
        {
            Parallel.For(0, plan.Riders, new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = Environment.ProcessorCount }, number =>
            {
                rides[number] = One(coach, options, plan, number);
                progress?.Invoke(Interlocked.Increment(ref done));
            });
        }
        catch (AggregateException e) when (e.InnerException is NoSuchRiderException none)
        {
            throw new NoSuchRiderException(none.Message);
        }

        return [.. rides];
    }

    /// <summary>The talk of one rider of the plan, a line a turn, with the truth first and the end last.</summary>
    public static IEnumerable<string> Talk(Coach coach, RunPlan plan, int number)
    {
        var rider = Draw(coach, plan, number);
        var lines = new List<string> { $"rider {number} has: {string.Join(", ", rider.Machine.Faults)}; shows: {string.Join(", ", rider.Complaints)}" };
        var (ride, _) = CoachedRide.Of(coach, rider, plan.Habits, lines.Add);
        return lines.Append($"{ride.Ending}{(ride.RightCause ? ", right cause" : "")}; led: {ride.Lead ?? "nothing"}");
    }

    private static Rider Draw(Coach coach, RunPlan plan, int number)
    {
        var faults = coach.Knowledge.Model.Faults;
        var wanted = plan.PerFault ? plan.Wanted with { Fault = faults[number % faults.Length].Id } : plan.Wanted;
        return new RiderDraw(coach.Knowledge, wanted).Draw(plan.Seed, number);
    }

    private static RiderRides One(Coach coach, CoachOptions options, RunPlan plan, int number)
    {
        var rider = Draw(coach, plan, number);
        var (coached, believed) = CoachedRide.Of(coach, rider, plan.Habits);
        return new RiderRides(
            coached,
            UncoachedRide.InFixedOrder(coach.Knowledge, rider, plan.Habits, options.HazardLimit, believed),
            UncoachedRide.InRandomOrder(coach.Knowledge, rider, plan.Habits, options.HazardLimit));
    }
}
