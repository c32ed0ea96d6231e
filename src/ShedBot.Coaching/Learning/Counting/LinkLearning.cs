using System.Collections.Immutable;
using ShedBot.Coaching.Learning.Proving;
using ShedBot.Knowledge.Compiling;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>From counts to the strengths of links, within the limits. Its numbers are chances: 'if only this is wrong, how often do you see it?'</summary>
internal sealed class LinkLearning : ILearnable
{
    /// <summary>All states of a finding together stay at or below this, unless their words have them higher already.</summary>
    private const double MostShown = 0.97;

    private sealed record Place(LinkTarget Target, int Fault, int Finding, int State, double Low, double High, bool MayMove);

    private readonly RuleSheet rules;
    private readonly LearningLimits limits;
    private readonly Func<int, PartsCount> counts;
    private readonly Place[] places;
    private readonly Dictionary<(int Fault, int Finding), double[]> priors = [];

    /// <param name="counts">By the part of the cases that is not counted.</param>
    public LinkLearning(RuleSheet rules, LearningLimits limits, SafetyLimits safety, Func<int, PartsCount> counts, Func<LearningTarget, bool> wanted)
    {
        (this.rules, this.limits, this.counts) = (rules, limits, counts);
        places = [.. Places(safety, wanted)];
        Unlearnt = [.. places.Select(p => priors[(p.Fault, p.Finding)][p.State])];
        var all = counts(CaseFolds.None);
        Free = [.. places.Select(p => p.MayMove && all.Shown.TryGetValue((p.Fault, p.Finding), out var asked) && asked.Enough(limits))];
    }

    /// <summary>By number: what it is about.</summary>
    public ImmutableArray<LinkTarget> Targets => [.. places.Select(p => p.Target)];

    public double[] Unlearnt { get; }

    public bool[] Free { get; }

    public double[] Learn(double sampleSize, int fold, bool[] free)
    {
        var (shown, after) = (counts(fold).Shown, (double[])Unlearnt.Clone());
        foreach (var group in Enumerable.Range(0, places.Length).Where(at => free[at]).GroupBy(at => (places[at].Fault, places[at].Finding)))
        {
            if (!shown.TryGetValue(group.Key, out var asked)) continue;
            var prior = priors[group.Key];
            var tally = asked.Tally(prior, sampleSize);
            foreach (var at in group)
                after[at] = Math.Clamp(tally.Mean(places[at].State, prior, sampleSize), Math.Min(places[at].Low, prior[places[at].State]), Math.Max(places[at].High, prior[places[at].State]));
            var (most, sum) = (Math.Max(MostShown, 1 - prior[0]), Gross(group.Key, after).Skip(1).Sum());
            foreach (var at in group)
            {
                // What goes up gives way again where all states together would leave nothing for the normal one.
                if (sum > most && after[at] > Unlearnt[at]) after[at] = Math.Max(Unlearnt[at], after[at] * most / sum);
                if (Math.Abs(after[at] - Unlearnt[at]) < limits.LeastStep) after[at] = Unlearnt[at];
            }
        }

        return after;
    }

    public Func<WeighedCase, double> Gain(double[] numbers, int fold)
    {
        var (times, sheets) = (counts(fold).Times, new Dictionary<int, FindingSheet>());
        foreach (var (fault, finding) in Enumerable.Range(0, places.Length).Where(at => numbers[at] != Unlearnt[at]).Select(at => (places[at].Fault, places[at].Finding)).Distinct())
        {
            var (seen, gross) = (rules.Model.Findings[finding], Gross((fault, finding), numbers));
            var words = rules.Knowledge.Faults[rules.Model.Faults[fault].Id].ShowsAs[seen.Id];
            var laidOver = Strengths.Learnt(seen.States, words, seen.Leak, state => gross[seen.States.IndexOf(state)]);
            sheets[finding] = sheets.GetValueOrDefault(finding, rules.Finding(finding)).With(fault, GrossStrength.ToNet(laidOver, seen.Leak.AsSpan()));
        }

        return c => Gain(c, times, sheets);
    }

    /// <summary>The links that move, with what was counted of them.</summary>
    public IEnumerable<PartCounted> Counted(double[] numbers)
    {
        for (var at = 0; at < places.Length; at++)
        {
            if (numbers[at] == Unlearnt[at]) continue;
            var (place, asked) = (places[at], counts(CaseFolds.None).Shown[(places[at].Fault, places[at].Finding)]);
            var tally = asked.Tally(priors[(place.Fault, place.Finding)], limits.SampleSize).Sum;
            yield return new PartCounted(place.Target, Unlearnt[at], numbers[at], tally[place.State], tally.Sum(), asked.Cases, asked.Mended, asked.Members);
        }
    }

    /// <summary>What was said unasked belongs to what the rider came with, and so speaks neither for nor against a strength.</summary>
    private double Gain(WeighedCase c, double[] times, Dictionary<int, FindingSheet> sheets)
    {
        var said = c.Story.Stretches.SelectMany((s, stretch) => s.Where(f => sheets.ContainsKey(f.Finding) && c.Story.Hints.All(h => h.Finding != f.Finding))
            .Select(f => (Stretch: stretch, Old: rules.Finding(f.Finding), New: sheets[f.Finding], Weights: f.Raw))).ToArray();
        if (said.Length == 0) return 0;
        var (before, after) = (0.0, 0.0);
        foreach (var way in c.Ways)
        {
            var (weight, ratio) = (way.Times(times), 1.0);
            foreach (var (stretch, old, changed, weights) in said)
            {
                var (one, other) = (way.Course.OneIn(stretch), way.Course.OtherIn(stretch));
                ratio *= changed.Weigh(weights, one, other) / old.Weigh(weights, one, other);
            }

            before += weight;
            after += weight * ratio;
        }

        return Math.Log(after / before);
    }

    /// <summary>By state: the gross chance; 0 where the rules have no word.</summary>
    private double[] Gross((int Fault, int Finding) link, double[] numbers)
    {
        var gross = new double[priors[link].Length];
        for (var at = 0; at < places.Length; at++)
        {
            if ((places[at].Fault, places[at].Finding) == link) gross[places[at].State] = numbers[at];
        }

        return gross;
    }

    private IEnumerable<Place> Places(SafetyLimits safety, Func<LearningTarget, bool> wanted)
    {
        for (var finding = 0; finding < rules.Model.Findings.Length; finding++)
        {
            var seen = rules.Model.Findings[finding];
            foreach (var link in seen.Links)
            {
                if (!rules.Knowledge.Faults.TryGetValue(link.Fault, out var rule) || !rule.ShowsAs.TryGetValue(seen.Id, out var words)) continue;
                var fault = rules.Model.FaultAt(link.Fault);
                var prior = priors[(fault, finding)] = new StateChances(rules.Model, finding).Given([fault]);
                for (var state = 1; state < prior.Length; state++)
                {
                    if (!words.TryGetValue(seen.States[state], out var word)) continue;
                    var target = new LinkTarget(link.Fault, seen.Id, seen.States[state]);
                    var stops = safety.Stops(seen.Id, seen.States[state]);
                    var (low, high) = PartCounted.Band(word, limits.WordSteps);
                    yield return new Place(
                        target, fault, finding, state, Math.Max(stops ? prior[state] : low, seen.Leak[state]), high, wanted(target) && (stops || !safety.Stops(seen.Id)));
                }
            }
        }
    }
}
