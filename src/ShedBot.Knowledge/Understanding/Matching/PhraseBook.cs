using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>A meaning that riders put in words, and one of its phrases as it was read.</summary>
internal sealed record Phrase(string Meaning, ImmutableArray<Feature> Features);

/// <param name="Affirmed">How well the statement says this, 0 to 1.</param>
/// <param name="Denied">How well it says that this is not so, 0 to 1.</param>
/// <param name="Told">How well a phrase was said nearly whole, 0 to 1: every word of a short one, all but one of a longer one.</param>
internal readonly record struct Match(string Meaning, double Affirmed, double Denied, double Told);

/// <summary>
/// The phrases of one kind of rule, compared with a statement in two ways that are joined as independent evidence: the nearest phrase
/// (weighted share of the phrase that is said, times a gentler share of the statement that the phrase accounts for), and a vote of the
/// words, each for the meanings whose phrases use it. A word weighs more the fewer meanings use it (inverse document frequency).
/// </summary>
internal sealed class PhraseBook
{
    private const double LightShare = 0.3, PlainShare = 0.55, StrangerWeight = 0.45, OtherThingWeight = 3;
    private const double StrictnessOfRest = 0.55, TrustInVote = 0.45;

    /// <summary>So much weight has to agree before a phrase, or the vote, counts in full: one everyday word proves nothing.</summary>
    private const double FullPhrase = 1.8, FullVote = 2.2, FullAct = 0.6;

    private readonly ImmutableArray<Phrase> phrases;
    private readonly IReadOnlySet<string> otherThings, concepts, props;
    private readonly double[] phraseWeights, phraseActs;
    private readonly double fullest;
    private readonly FrozenDictionary<string, double> weights;
    private readonly FrozenDictionary<string, int[]> phrasesWith;
    private readonly FrozenDictionary<Feature, (string Meaning, double Share)[]> votes;

    /// <param name="otherThings">Words that name something else: where the phrases do not know them, they speak against every phrase.</param>
    /// <param name="concepts">The club's own concepts, which weigh more than everyday words.</param>
    /// <param name="props">Parts and circumstances, which say nothing without what happens: a match has to hold something else too. Empty: no such demand.</param>
    /// <param name="modest">True where little is said and little is meant: the few answers to one question.</param>
    /// <param name="background">Phrases of other books: words that are common there are no news here, and vote for them as well.</param>
    public PhraseBook(
        IEnumerable<Phrase> all,
        IReadOnlySet<string> otherThings,
        IReadOnlySet<string> concepts,
        IReadOnlySet<string> props,
        IReadOnlyCollection<Phrase> background,
        bool modest = false)
    {
        this.otherThings = otherThings;
        this.concepts = concepts;
        this.props = props;
        phrases = [.. all.Where(p => p.Features.Length > 0)];
        var meanings = phrases.Select(p => p.Meaning).Distinct().Count();
        var own = Users(phrases);
        var everywhere = Users(phrases.Concat(background));
        var allMeanings = meanings + background.Select(p => p.Meaning).Distinct().Count();
        weights = own.ToFrozenDictionary(u => u.Key, u =>
            Share(u.Key) * Math.Sqrt(Rarity(u.Value, meanings) * Rarity(everywhere[u.Key], allMeanings) * Math.Log(meanings + 1.5) / Math.Log(allMeanings + 1.5)));
        phraseWeights = [.. phrases.Select(p => p.Features.Sum(f => weights[f.Concept]))];
        phraseActs = [.. phrases.Select(p => p.Features.Where(f => !props.Contains(f.Concept)).Sum(f => weights[f.Concept]))];
        phrasesWith = phrases.SelectMany((p, i) => p.Features.Select(f => (f.Concept, Index: i))).Distinct()
            .GroupBy(p => p.Concept)
            .ToFrozenDictionary(g => g.Key, g => g.Select(p => p.Index).ToArray());
        votes = Votes(background);
        // A book of a few short phrases never reaches the full weights; then its own fullest phrase is the measure.
        fullest = modest ? 0.1 : phraseWeights.DefaultIfEmpty(1).Max();
    }

    /// <summary>Every meaning that shares a word with the statement.</summary>
    public List<Match> Compare(IReadOnlyCollection<Feature> said)
    {
        var total = said.Sum(f => WeightOf(f.Concept));
        var same = new Dictionary<int, (double Same, double Against, double DeniedHere, double Act, int Words)>();
        foreach (var feature in said)
        {
            var weight = WeightOf(feature.Concept);
            foreach (var index in phrasesWith.GetValueOrDefault(feature.Concept, []))
            {
                var (agrees, against, denied, act, count) = same.GetValueOrDefault(index);
                if (!props.Contains(feature.Concept))
                    act += weight;
                if (phrases[index].Features.Contains(feature))
                    (agrees, count) = (agrees + weight, count + 1);
                else
                    (against, denied) = (against + weight, denied + (feature.Denied ? weight : 0));
                same[index] = (agrees, against, denied, act, count);
            }
        }
        var vote = Vote(said, total);
        var best = new Dictionary<string, Match>();
        foreach (var (index, (agrees, against, denied, act, count)) in same)
        {
            var meaning = phrases[index].Meaning;
            var happens = Math.Min(1, act / FullAct);
            var strength = Math.Min(1, phraseActs[index] == 0 ? agrees / phraseWeights[index] : act / Math.Min(FullAct, phraseActs[index])) * Math.Min(1, (agrees + against) / Math.Min(FullPhrase, fullest));
            var covered = strength * Math.Min(1, Math.Max(0, agrees - against) / phraseWeights[index]);
            var nearest = covered * Math.Pow(Math.Clamp((agrees - against) / total, 0, 1), StrictnessOfRest);
            var turned = denied > 0.3 * (agrees + against)
                ? strength * Math.Min(1, (agrees + against) / phraseWeights[index]) * Math.Pow(Math.Min(1, (agrees + against) / total), StrictnessOfRest)
                : 0;
            var affirmed = 1 - (1 - nearest) * (1 - TrustInVote * happens * vote.GetValueOrDefault(meaning));
            if (!best.TryGetValue(meaning, out var so))
                so = new Match(meaning, 0, 0, 0);
            var told = against == 0 && count >= phrases[index].Features.Length - (phrases[index].Features.Length > 4 ? 1 : 0) ? covered : 0;
            best[meaning] = new Match(meaning, Math.Max(so.Affirmed, affirmed), Math.Max(so.Denied, turned), Math.Max(so.Told, told));
        }
        return [.. best.Values];
    }

    private static Dictionary<string, int> Users(IEnumerable<Phrase> phrases) =>
        phrases.SelectMany(p => p.Features.Select(f => (f.Concept, p.Meaning))).Distinct().GroupBy(p => p.Concept).ToDictionary(g => g.Key, g => g.Count());

    private static double Rarity(int users, int meanings) => Math.Max(0.05, Math.Log((meanings + 1.5) / (users + 0.5)));

    private double Share(string concept) =>
        English.LightWords.Contains(concept) ? LightShare : concepts.Contains(concept) ? 1 : PlainShare;

    public bool Knows(string concept) => weights.ContainsKey(concept);

    private double WeightOf(string concept) =>
        weights.TryGetValue(concept, out var weight) ? weight
        : otherThings.Contains(concept) ? OtherThingWeight
        : StrangerWeight * Share(concept);

    private FrozenDictionary<Feature, (string, double)[]> Votes(IReadOnlyCollection<Phrase> background)
    {
        var everyone = phrases.Concat(background).ToList();
        var sizes = everyone.GroupBy(p => p.Meaning).ToDictionary(g => g.Key, g => (double)g.Count());
        return everyone.SelectMany(p => p.Features.Distinct().Select(f => (Feature: f, p.Meaning)))
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
                count[meaning] = count.GetValueOrDefault(meaning) + share * WeightOf(feature.Concept) / Math.Max(total, Math.Min(FullVote, fullest));
        }
        return count;
    }
}
