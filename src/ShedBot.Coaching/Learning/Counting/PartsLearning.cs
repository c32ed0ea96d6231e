using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>A link or a repair's chance that moves.</summary>
/// <param name="Fault">Index of the fault.</param>
/// <param name="Other">Index of the finding, or of the repair.</param>
/// <param name="State">Index of the state; 1 for a repair.</param>
/// <param name="Counted">How often it was so.</param>
/// <param name="All">Of how many.</param>
internal sealed record PartCounted(
    LearningTarget Target, int Fault, int Other, int State, double Before, double After, double Counted, double All, int Cases, int Mended, int Members);

/// <summary>From counts to the strengths of links and the chances of repairs, within the limits.</summary>
internal static class PartsLearning
{
    /// <summary>All states of a finding together stay at or below this, unless their words have them higher already.</summary>
    private const double MostShown = 0.97;

    public static IEnumerable<PartCounted> Links(
        RuleSheet rules, LearningLimits limits, SafetyLimits safety, PartsCount parts, Func<LearningTarget, bool> wanted)
    {
        foreach (var ((fault, finding), asked) in parts.Shown)
        {
            if (!asked.Enough(limits)) continue;
            var (id, seen) = (rules.Model.Faults[fault].Id, rules.Model.Findings[finding]);
            if (!rules.Knowledge.Faults.TryGetValue(id, out var rule) || !rule.ShowsAs.TryGetValue(seen.Id, out var words)) continue;
            var prior = new StateChances(rules.Model, finding).Given([fault]);
            var (after, tally) = ((double[])prior.Clone(), asked.Tally(prior, limits.SampleSize));
            for (var state = 1; state < after.Length; state++)
            {
                var target = new LinkTarget(id, seen.Id, seen.States[state]);
                if (!words.TryGetValue(seen.States[state], out var word) || !wanted(target)) continue;
                var stops = safety.Stops(seen.Id, seen.States[state]);
                if (!stops && safety.Stops(seen.Id)) continue;
                var (low, high) = Band(word, limits.WordSteps);
                after[state] = Math.Clamp(tally.Mean(state, prior, limits.SampleSize), Math.Max(stops ? prior[state] : low, seen.Leak[state]), Math.Max(high, prior[state]));
            }

            var (most, sum) = (Math.Max(MostShown, 1 - prior[0]), after.Skip(1).Sum());
            for (var state = 1; state < after.Length; state++)
            {
                // What goes up gives way again where all states together would leave nothing for the normal one.
                if (sum > most && after[state] > prior[state]) after[state] = Math.Max(prior[state], after[state] * most / sum);
                if (after[state] == prior[state] || Math.Abs(after[state] - prior[state]) < limits.LeastStep) continue;
                yield return new PartCounted(
                    new LinkTarget(id, seen.Id, seen.States[state]), fault, finding, state, prior[state], after[state], tally.Sum[state], tally.Sum.Sum(),
                    asked.Cases, asked.Mended, asked.Members);
            }
        }
    }

    public static IEnumerable<PartCounted> Mends(RuleSheet rules, LearningLimits limits, PartsCount parts, Func<LearningTarget, bool> wanted)
    {
        foreach (var ((repair, fault), tally) in parts.Mended)
        {
            var target = new MendTarget(rules.Model.Repairs[repair].Id, rules.Model.Faults[fault].Id);
            if (!tally.Enough(limits) || !wanted(target)) continue;
            if (!rules.Knowledge.Repairs[target.Repair].Mends.TryGetValue(target.Fault, out var word)) continue;
            var before = ChanceWords.Chance(word);
            var (low, high) = Band(word, limits.WordSteps);
            var after = Math.Clamp(tally.Mean(1, [1 - before, before], limits.SampleSize), low, high);
            if (after == before || Math.Abs(after - before) < limits.LeastStep) continue;
            yield return new PartCounted(target, fault, repair, 1, before, after, tally.Sum[1], tally.Sum.Sum(), tally.Cases, tally.Mended, tally.Members);
        }
    }

    /// <summary>The chances of the words so many steps down and up the scale.</summary>
    private static (double Low, double High) Band(string word, int steps)
    {
        var scale = ChanceWords.Scale;
        var at = Enumerable.Range(0, scale.Length).First(i => scale[i].Word == word);
        return (Math.Max(Learnt.LeastChance, scale[Math.Max(0, at - steps)].Chance), Math.Min(Learnt.MostChance, scale[Math.Min(scale.Length - 1, at + steps)].Chance));
    }
}
