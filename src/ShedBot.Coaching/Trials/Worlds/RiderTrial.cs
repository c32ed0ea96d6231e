using System.Collections.Immutable;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Worlds;

/// <summary>Coaches the same simulated riders under old and new rules.</summary>
internal sealed class RiderTrial(RulesPair rules, TrialScope scope, TrialCoaches coaches, RidersTried tried)
{
    private const int MostSwaps = 4;

    /// <param name="done">Told of each rider.</param>
    public WorldPart Of(TrialWorld world, Action done, CancellationToken ct)
    {
        var (truth, other) = world == TrialWorld.NewRight ? (rules.New, rules.Old) : (rules.Old, rules.New);
        var kinds = TouchedRiders.Of(scope, truth, other);
        var half = tried.Riders / 2;
        return new WorldPart(
            world,
            Group(kinds.IsEmpty ? [] : Ride(truth, half, i => kinds[i % kinds.Length], 0, done, ct)),
            Group(Ride(truth, tried.Riders - half, _ => new RidersWanted(), half, done, ct)));
    }

    /// <param name="first">The number of the first rider: no two are alike.</param>
    private List<RidePair> Ride(KnowledgeBase truth, int riders, Func<int, RidersWanted> wanted, int first, Action done, CancellationToken ct)
    {
        var pairs = new RidePair?[riders];
        Parallel.For(0, riders, new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            pairs[i] = Drawn(truth, wanted(i), first + i) is { } rider ? coaches.Coach(truth, rider) : null;
            done();
        });
        return [.. pairs.OfType<RidePair>()];
    }

    /// <returns>Null where the rules make such a rider too rare to be met.</returns>
    private Rider? Drawn(KnowledgeBase truth, RidersWanted wanted, int number)
    {
        try
        {
            return new RiderDraw(truth, wanted).Draw(tried.Seed, number);
        }
        catch (NoSuchRiderException)
        {
            return null;
        }
    }

    private static RiderGroup Group(List<RidePair> pairs)
    {
        var changed = pairs.Where(p => p.Old.Lead != p.New.Lead).ToList();
        ImmutableArray<(Believed Old, Believed New)> believed =
            [.. pairs.Where(p => p.Old.BeforeRepair is not null && p.New.BeforeRepair is not null).Select(p => (p.Old.BeforeRepair!, p.New.BeforeRepair!))];
        return new RiderGroup(
            pairs.Count,
            changed.Count,
            Swaps.Commonest(changed.Select(p => (p.Old.Lead ?? "nothing", p.New.Lead ?? "nothing", 1)), MostSwaps),
            [
                Means(Measure.Cost, pairs, r => r.Cost),
                Means(Measure.Asked, pairs, r => r.Asked),
                Shares(Measure.RightCause, pairs, r => r.RightCause),
                Shares(Measure.Mended, pairs, r => r.Ending == Ending.Mended),
                Shares(Measure.HandedOver, pairs, r => r.Ending == Ending.HandedOver),
                Paired.Means(Measure.Brier, [.. believed.Select(b => (Brier(b.Old), Brier(b.New)))]),
                Paired.Calibration([.. believed.Select(b => (b.Old.Lead, b.New.Lead))]),
            ],
            TrialBin.Of(believed.Select(b => b.Old.Lead)),
            TrialBin.Of(believed.Select(b => b.New.Lead)));
    }

    private static double Brier(Believed believed) => Reasoning.Calibration.Scores.Brier(believed.All) * believed.All.Length;

    private static Compared Means(Measure measure, List<RidePair> pairs, Func<Ride, double> of) =>
        Paired.Means(measure, [.. pairs.Select(p => (of(p.Old), of(p.New)))]);

    private static Compared Shares(Measure measure, List<RidePair> pairs, Func<Ride, bool> of) => Paired.Shares(measure, pairs.Select(p => (of(p.Old), of(p.New))));
}
