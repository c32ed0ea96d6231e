using System.Collections.Immutable;
using ShedBot.Coaching.Learning.Proving;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>From counts to the chances of repairs, within the limits. Its numbers are the chances that a repair mends a fault.</summary>
internal sealed class MendLearning : ILearnable
{
    private sealed record Place(MendTarget Target, int Repair, int Fault, double Low, double High);

    private readonly LearningLimits limits;
    private readonly RuleSheet rules;
    private readonly Func<int, PartsCount> counts;
    private readonly Place[] places;
    private readonly Dictionary<(int Repair, int Fault), int> placeOf = [];

    /// <param name="counts">By the part of the cases that is not counted.</param>
    public MendLearning(RuleSheet rules, LearningLimits limits, Func<int, PartsCount> counts, Func<LearningTarget, bool> wanted)
    {
        (this.rules, this.limits, this.counts) = (rules, limits, counts);
        places =
        [
            .. rules.Knowledge.Repairs.Values.SelectMany(r => r.Mends.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m =>
            {
                var (low, high) = PartCounted.Band(m.Value, limits.WordSteps);
                return new Place(new MendTarget(r.Id, m.Key), rules.Model.RepairAt(r.Id), rules.Model.FaultAt(m.Key), low, high);
            })),
        ];
        for (var at = 0; at < places.Length; at++) placeOf[(places[at].Repair, places[at].Fault)] = at;
        Unlearnt = [.. places.Select(p => rules.Mends(p.Repair)[p.Fault])];
        var all = counts(CaseFolds.None);
        Free = [.. places.Select(p => all.Mended.TryGetValue((p.Repair, p.Fault), out var tally) && tally.Enough(limits) && wanted(p.Target))];
    }

    /// <summary>By number: what it is about.</summary>
    public ImmutableArray<MendTarget> Targets => [.. places.Select(p => p.Target)];

    public double[] Unlearnt { get; }

    public bool[] Free { get; }

    public double[] Learn(double sampleSize, int fold, bool[] free)
    {
        var (mended, after) = (counts(fold).Mended, (double[])Unlearnt.Clone());
        for (var at = 0; at < places.Length; at++)
        {
            if (!free[at] || !mended.TryGetValue((places[at].Repair, places[at].Fault), out var tally)) continue;
            var mean = Math.Clamp(tally.Mean(1, [1 - Unlearnt[at], Unlearnt[at]], sampleSize), places[at].Low, places[at].High);
            if (Math.Abs(mean - Unlearnt[at]) >= limits.LeastStep) after[at] = mean;
        }

        return after;
    }

    public Func<WeighedCase, double> Gain(double[] numbers, int fold)
    {
        var times = counts(fold).Times;
        return c =>
        {
            if (!c.Story.Trials.Any(t => IsMoved(rules.Model.RepairAt(t.Repair), numbers))) return 0;
            int[] repairs = [.. c.Story.Trials.Select(t => rules.Model.RepairAt(t.Repair))];
            var (before, after) = (0.0, 0.0);
            foreach (var way in c.Ways)
            {
                var weight = way.Times(times);
                before += weight;
                after += weight * Ratio(repairs, way.Course.One, way.Course.OneUntil, numbers) * Ratio(repairs, way.Course.Other, way.Course.OtherUntil, numbers);
            }

            return Math.Log(after / before);
        };
    }

    /// <summary>The chances that move, with what was counted of them.</summary>
    public IEnumerable<PartCounted> Counted(double[] numbers)
    {
        for (var at = 0; at < places.Length; at++)
        {
            if (numbers[at] == Unlearnt[at]) continue;
            var tally = counts(CaseFolds.None).Mended[(places[at].Repair, places[at].Fault)];
            yield return new PartCounted(places[at].Target, Unlearnt[at], numbers[at], tally.Sum[1], tally.Sum.Sum(), tally.Cases, tally.Mended, tally.Members);
        }
    }

    private bool IsMoved(int repair, double[] numbers) =>
        rules.Model.Repairs[repair].Fixes.Any(f => placeOf.TryGetValue((repair, rules.Model.FaultAt(f.Fault)), out var at) && numbers[at] != Unlearnt[at]);

    /// <summary>P(the fault was mended at just this trial) by these numbers over the same by the unlearnt ones.</summary>
    private double Ratio(int[] repairs, int fault, int until, double[] numbers)
    {
        var ratio = 1.0;
        if (fault < 0) return ratio;
        for (var trial = 0; trial < repairs.Length && trial <= until; trial++)
        {
            if (!placeOf.TryGetValue((repairs[trial], fault), out var at)) continue;
            ratio *= trial == until ? numbers[at] / Unlearnt[at] : (1 - numbers[at]) / (1 - Unlearnt[at]);
        }

        return ratio;
    }
}
