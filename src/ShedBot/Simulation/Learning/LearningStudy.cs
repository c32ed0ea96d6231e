using System.Collections.Immutable;
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
    /// <summary>All cases of a simulated club are closed on one day; this is long enough after it that all of them count.</summary>
    private static readonly DateTimeOffset Later = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    private readonly KnowledgeBase rules = load(Learnt.Nothing);

    public ImmutableArray<StageResult> Run(CancellationToken ct) => [.. plan.Seeds.SelectMany(seed => Club(seed, ct))];

    private IEnumerable<StageResult> Club(int seed, CancellationToken ct)
    {
        var drawn = TrueWorld.Draw(rules, plan.Spread, seed);
        var truth = load(drawn);
        var coach = Remembering(rules);
        var life = new ClubLife(coach, truth, plan.Habits, seed);
        tell($"club {seed}: riding {plan.Stages[^1]} cases");
        ImmutableArray<ClosedCase?> cases = [.. Ride(plan.Stages[^1], life.Case, ct)];
        yield return Measure(seed, 0, Learnt.Nothing, coach, truth, life.Blamed, ct);
        foreach (var stage in plan.Stages)
        {
            var learnt = Learner.Learn(rules, cases.Take(stage).OfType<ClosedCase>(), limits, Later).Learnt;
            tell($"club {seed}, {stage} cases: {Distance.Of(drawn, learnt)}");
            yield return Measure(seed, stage, learnt, learnt.IsNothing ? coach : Remembering(load(learnt)), truth, life.Blamed, ct);
        }

        if (plan.Spread is { Spread: 0, LinksMoved: 0 }) yield break;
        yield return Measure(seed, -1, Learnt.Nothing, Remembering(truth), truth, life.Blamed, ct);
    }

    private StageResult Measure(int seed, int cases, Learnt learnt, RememberingCoach coach, KnowledgeBase truth, string blamed, CancellationToken ct)
    {
        var moves = learnt.Odds.Length + learnt.Links.Length + learnt.Mends.Length;
        tell($"club {seed}, {cases} cases: {moves} numbers moved, {blamed} x {learnt.TimesOf(blamed)}; measuring");
        var draw = new RiderDraw(truth, new RidersWanted());
        var rides = Ride(plan.Riders, n => Of(CoachedRide.Across(coach, truth, draw.Draw(seed + StudyPlan.Fresh, n), new Habits())), ct);
        return new StageResult(seed, cases, moves, learnt.TimesOf(blamed), [.. rides]);
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
