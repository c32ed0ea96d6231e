using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>A meaning that riders put in words, and one of its phrases as it was read.</summary>
internal sealed record Phrase(string Meaning, ImmutableArray<Feature> Features);

/// <param name="Affirmed">How well the statement says this, 0 to 1.</param>
/// <param name="Denied">How well it says that this is not so, 0 to 1.</param>
/// <param name="Covered">The share of the nearest phrase that was said, 0 to 1.</param>
internal readonly record struct Match(string Meaning, double Affirmed, double Denied, double Covered);

/// <summary>
/// The phrases of one kind of rule, compared with a statement in two ways that are joined as independent evidence: the nearest phrase
/// (weighted share of the phrase that is said, times a gentler share of the statement that the phrase accounts for), and a vote of the
/// words, each for the meanings whose phrases use it. A word weighs more the fewer meanings use it (inverse document frequency).
/// </summary>
internal sealed class PhraseBook
{
    private const double LightShare = 0.35, StrangerWeight = 0.45, OtherThingWeight = 2, StrictnessOfRest = 0.35, TrustInVote = 0.55;

    private readonly ImmutableArray<Phrase> phrases;
    private readonly IReadOnlySet<string> otherThings;
    private readonly double[] phraseWeights;
    private readonly FrozenDictionary<string, double> weights;
    private readonly FrozenDictionary<string, int[]> phrasesWith;
    private readonly FrozenDictionary<Feature, (string Meaning, double Share)[]> votes;

    /// <param name="otherThings">Words that name something else: where the phrases do not know them, they speak against every phrase.</param>
    public PhraseBook(IEnumerable<Phrase> all, IReadOnlySet<string> otherThings)
    {
        this.otherThings = otherThings;
        phrases = [.. all.Where(p => p.Features.Length > 0)];
        var meanings = phrases.Select(p => p.Meaning).Distinct().Count();
        weights = phrases.SelectMany(p => p.Features.Select(f => (f.Concept, p.Meaning))).Distinct()
            .GroupBy(p => p.Concept)
            .ToFrozenDictionary(g => g.Key, g => Weight(g.Key, g.Count(), meanings));
        phraseWeights = [.. phrases.Select(p => p.Features.Sum(f => weights[f.Concept]))];
        phrasesWith = phrases.SelectMany((p, i) => p.Features.Select(f => (f.Concept, Index: i))).Distinct()
            .GroupBy(p => p.Concept)
            .ToFrozenDictionary(g => g.Key, g => g.Select(p => p.Index).ToArray());
        votes = Votes();
    }

    /// <summary>Every meaning that shares a word with the statement.</summary>
    public List<Match> Compare(IReadOnlyCollection<Feature> said)
    {
        var total = said.Sum(f => WeightOf(f.Concept));
        var same = new Dictionary<int, (double Same, double Against, double DeniedHere)>();
        foreach (var feature in said)
        {
            var weight = WeightOf(feature.Concept);
            foreach (var index in phrasesWith.GetValueOrDefault(feature.Concept, []))
            {
                var (agrees, against, denied) = same.GetValueOrDefault(index);
                if (phrases[index].Features.Contains(feature))
                    agrees += weight;
                else
                    (against, denied) = (against + weight, denied + (feature.Denied ? weight : 0));
                same[index] = (agrees, against, denied);
            }
        }
        var vote = Vote(said, total);
        var best = new Dictionary<string, Match>();
        foreach (var (index, (agrees, against, denied)) in same)
        {
            var meaning = phrases[index].Meaning;
            var covered = Math.Min(1, Math.Max(0, agrees - against) / phraseWeights[index]);
            var nearest = covered * Math.Pow(Math.Clamp((agrees - against) / total, 0, 1), StrictnessOfRest);
            var turned = denied > 0.3 * (agrees + against)
                ? Math.Min(1, (agrees + against) / phraseWeights[index]) * Math.Pow(Math.Min(1, (agrees + against) / total), StrictnessOfRest)
                : 0;
            var affirmed = 1 - (1 - nearest) * (1 - TrustInVote * vote.GetValueOrDefault(meaning));
            if (!best.TryGetValue(meaning, out var so))
                so = new Match(meaning, 0, 0, 0);
            best[meaning] = new Match(meaning, Math.Max(so.Affirmed, affirmed), Math.Max(so.Denied, turned), Math.Max(so.Covered, covered));
        }
        return [.. best.Values];
    }

    private static double Weight(string concept, int users, int meanings) =>
        Math.Max(0.05, Math.Log((meanings + 1.5) / (users + 0.5))) * (English.LightWords.Contains(concept) ? LightShare : 1);

    public bool Knows(string concept) => weights.ContainsKey(concept);

    private double WeightOf(string concept) =>
        weights.TryGetValue(concept, out var weight) ? weight
        : otherThings.Contains(concept) ? OtherThingWeight
        : English.LightWords.Contains(concept) ? StrangerWeight * LightShare : StrangerWeight;

    private FrozenDictionary<Feature, (string, double)[]> Votes()
    {
        var sizes = phrases.GroupBy(p => p.Meaning).ToDictionary(g => g.Key, g => (double)g.Count());
        return phrases.SelectMany(p => p.Features.Distinct().Select(f => (Feature: f, p.Meaning)))
            .GroupBy(p => p.Feature)
            .ToFrozenDictionary(g => g.Key, g =>
            {
                var shares = g.GroupBy(p => p.Meaning).Select(m => (Meaning: m.Key, Share: m.Count() / sizes[m.Key])).ToArray();
                var sum = shares.Sum(s => s.Share);
                return shares.Select(s => (s.Meaning, s.Share / sum)).ToArray();
            });
    }

    private Dictionary<string, double> Vote(IReadOnlyCollection<Feature> said, double total)
    {
        var count = new Dictionary<string, double>();
        foreach (var feature in said)
        {
            foreach (var (meaning, share) in votes.GetValueOrDefault(feature, []))
                count[meaning] = count.GetValueOrDefault(meaning) + share * WeightOf(feature.Concept) / total;
        }
        return count;
    }
}
