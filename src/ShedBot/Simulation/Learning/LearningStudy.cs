using System.Collections.Immutable;
using System.Diagnostics;
using ShedBot.Coaching;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Understanding;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Simulation.Learning;

/// <summary>Simulated clubs whose bikes do not follow the rules: what learning from their closed cases is worth to fresh riders.</summary>
/// <param name="load">The rules with something learnt laid over them.</param>
/// <param name="tell">Told how far it is, in a line.</param>
internal sealed class LearningStudy(Func<Learnt, KnowledgeBase> load, StudyPlan plan, LearningLimits limits, Action<string> tell)
{
    /// <summary>So many cases are kept at a time, so that a run that is cut short need not begin anew.</summary>
    private const int Chunk = 50;

    /// <summary>All cases of a simulated club are closed on one day; this is long enough after it that all of them count.</summary>
    private static readonly DateTimeOffset Later = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    /// <summary>One for all clubs: before anything is learnt they are coached alike.</summary>
    private readonly RememberingCoach coach = Remembering(load(Learnt.Nothing));

    public ImmutableArray<StageResult> Run(CancellationToken ct) => [.. plan.Seeds.SelectMany(seed => Club(seed, ct))];

    private IEnumerable<StageResult> Club(int seed, CancellationToken ct)
    {
        var drawn = TrueWorld.Draw(coach.Knowledge, plan.Spread, seed);
        var truth = load(drawn);
        var life = new ClubLife(coach, truth, plan.Habits, seed);
        var cases = Cases(seed, life, ct);
        var before = Measure(seed, Learnt.Nothing, coach, truth, ct);
        yield return new StageResult(seed, 0, 0, 0, 1, before);
        foreach (var stage in plan.Stages)
        {
            var watch = Stopwatch.StartNew();
            var report = Learner.Learn(coach.Knowledge, cases.Take(stage).OfType<ClosedCase>(), limits, Later);
            var learnt = report.Learnt;
            tell($"club {seed}, {stage} cases: {Distance.Of(drawn, learnt)}; learnt in {watch.Elapsed.TotalSeconds:0.0} s");
            foreach (var test in report.Tests) tell($"  {test.Says}");
            // Where nothing moved every rider is coached as before, to the letter.
            var rides = learnt.IsNothing ? before : Measure(seed, learnt, Remembering(load(learnt)), truth, ct);
            yield return new StageResult(seed, stage, report.Moves.Length, report.Tests.Sum(t => t.HeldBack), learnt.TimesOf(life.Blamed), rides);
        }

        if (plan.Spread is { Spread: 0, LinksMoved: 0 }) yield break;
        yield return new StageResult(seed, -1, 0, 0, 1, Measure(seed, drawn, Remembering(truth), truth, ct));
    }

    private List<ClosedCase?> Cases(int seed, ClubLife life, CancellationToken ct)
    {
        var kept = new KeptCases(plan, coach.Knowledge.Version, seed);
        var cases = kept.Read();
        while (cases.Count < plan.Stages[^1])
        {
            tell($"club {seed}: {cases.Count} of {plan.Stages[^1]} cases");
            var from = cases.Count;
            var ridden = Ride(Math.Min(Chunk, plan.Stages[^1] - from), n => life.Case(from + n), ct);
            kept.Add(ridden);
            cases.AddRange(ridden);
        }

        return cases;
    }

    private ImmutableArray<StudyRide> Measure(int seed, Learnt learnt, RememberingCoach coached, KnowledgeBase truth, CancellationToken ct)
    {
        tell($"club {seed}: {plan.Riders} fresh riders, {learnt.Odds.Length + learnt.Links.Length + learnt.Mends.Length} numbers unlike the rules");
        var draw = new RiderDraw(truth, new RidersWanted());
        return [.. Ride(plan.Riders, n => Of(CoachedRide.Across(coached, truth, draw.Draw(seed + StudyPlan.Fresh, n), new Habits())), ct)];
    }

    private static RememberingCoach Remembering(KnowledgeBase knowledge) => new(new Coach(knowledge, Listener.For(knowledge), new CoachOptions()));

    private T[] Ride<T>(int count, Func<int, T> ride, CancellationToken ct)
    {
        var rides = new T[count];
        Parallel.For(0, count, new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = plan.Threads }, number => rides[number] = ride(number));
        return rides;
    }

    private static StudyRide Of(Ride ride) => new(
        ride.Cost, ride.RightCause, ride.Ending == Ending.Mended, ride.Asked,
        All(ride.AfterComplaint), Log(ride.AfterComplaint), All(ride.BeforeRepair), ride.AfterComplaint?.Lead.Probability ?? double.NaN, ride.AfterComplaint?.Lead.Happened == true);

    private static double All(Believed? believed) => believed is null ? double.NaN : Scores.Brier(believed.All) * believed.All.Length;

    private static double Log(Believed? believed) =>
        believed is null ? double.NaN : Scores.Log(believed.All.Where(f => f.Happened).Select(f => f.Probability).DefaultIfEmpty(1));
}
