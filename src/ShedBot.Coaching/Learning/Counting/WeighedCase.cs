namespace ShedBot.Coaching.Learning.Counting;

/// <summary>A story with what it says of every set of faults, worked out once and then counted many times over.</summary>
/// <param name="Weight">What the case counts for, in (0, 1]: faded by its age, and capped with all others of its member.</param>
/// <param name="Anchor">What the rules' own word counts for beside it; see <see cref="CaseWeights.Anchors"/>.</param>
/// <param name="Odds">By fault, on this bike, before anything is learnt; shared between cases with the same opening.</param>
/// <param name="Opened">P(what the rider came with | each set); shared likewise.</param>
/// <param name="Told">P(the whole story | each set).</param>
internal sealed record WeighedCase(CaseStory Story, int Member, double Weight, double Anchor, double[] Odds, SparseWeights Opened, SparseWeights Told);

/// <summary>Weighs stories.</summary>
internal sealed class CaseWeigher(RuleSheet rules)
{
    /// <summary>Sets that are less likely than this beside all others are left out; learning moves odds a few times over at most.</summary>
    private const double Least = 1e-6;

    private readonly PairSets sets = new(rules.Faults);
    private readonly Dictionary<string, (double[] Odds, SparseWeights Opened)> openings = new(StringComparer.Ordinal);

    public PairSets Sets => sets;

    public WeighedCase Weigh(CaseStory story, int member, double weight, double anchor)
    {
        var weigher = new StoryWeigher(rules, story);
        if (!openings.TryGetValue(story.Opening, out var opening))
        {
            var odds = rules.OddsOf(story.Facts);
            openings[story.Opening] = opening = (odds, Sparse(odds, weigher.Opening));
        }

        return new WeighedCase(story, member, weight, anchor, opening.Odds, opening.Opened, Sparse(opening.Odds, weigher.Whole));
    }

    /// <param name="likelihood">Of a set.</param>
    private SparseWeights Sparse(double[] odds, Func<int, int, double> likelihood)
    {
        var all = sets.All;
        var (weights, sum) = (new double[all.Length], 0.0);
        for (var set = 0; set < all.Length; set++)
        {
            var (one, other) = all[set];
            var prior = odds[one] * (other < 0 ? 1 : odds[other]);
            if (prior == 0) continue;
            weights[set] = likelihood(one, other);
            sum += weights[set] * prior;
        }

        var (kept, of) = (new List<int>(), new List<double>());
        for (var set = 0; set < all.Length; set++)
        {
            var (one, other) = all[set];
            if (weights[set] * odds[one] * (other < 0 ? 1 : odds[other]) <= Least * sum) continue;
            kept.Add(set);
            of.Add(weights[set]);
        }

        return new SparseWeights([.. kept], [.. of]);
    }
}
