namespace ShedBot.Coaching.Learning.Counting;

/// <summary>A story with what it says of every set of faults, worked out once and then counted many times over.</summary>
/// <param name="Member">Index of the member.</param>
/// <param name="Weight">What the case counts for, in (0, 1]: faded by its age, and capped with all others of its member.</param>
/// <param name="Opened">What the rider came with; one and the same for cases with the same opening.</param>
/// <param name="Told">The whole story.</param>
/// <param name="Ways">The ways in which it may have gone, but for those that are too unlikely to count.</param>
internal sealed record WeighedCase(CaseStory Story, int Member, double Weight, WeighedSets Opened, WeighedSets Told, Way[] Ways);

/// <summary>One way in which a case may have gone.</summary>
/// <param name="Weight">P(the story, and that it went so) before anything is learnt, up to a factor.</param>
internal readonly record struct Way(Course Course, double Weight)
{
    /// <summary>The weight when the odds of each fault are multiplied so.</summary>
    public double Times(double[] times) => Weight * times[Course.One] * (Course.Other < 0 ? 1 : times[Course.Other]);
}

/// <summary>Weighs stories.</summary>
/// <param name="silence">What it tells that a complaint was not named; null to weigh as the coach does.</param>
internal sealed class CaseWeigher(RuleSheet rules, PairSets sets, Silence? silence)
{
    /// <summary>Sets that are less likely than this beside all others are left out; learning moves odds a few times over at most.</summary>
    private const double Least = 1e-5;

    /// <summary>The same for ways.</summary>
    private const double LeastWay = 1e-4;

    private readonly Dictionary<string, (double[] Priors, WeighedSets Opened)> openings = new(StringComparer.Ordinal);

    /// <summary>One who takes neither silence nor facts that nobody asked for as telling anything.</summary>
    public static CaseWeigher AsCoach(RuleSheet rules) => new(rules, new PairSets(rules.Faults), null);

    public WeighedCase Weigh(CaseStory story, int member, double weight)
    {
        var weigher = new StoryWeigher(rules, story);
        if (!openings.TryGetValue(story.Opening, out var opening))
        {
            var priors = Priors(story);
            openings[story.Opening] = opening = (priors, Sparse(priors, weigher.Opening));
        }

        var told = Sparse(opening.Priors, weigher.Whole);
        return new WeighedCase(story, member, weight, opening.Opened, told, Ways(weigher, opening.Priors, told));
    }

    /// <summary>P(fault | the whole story) before anything is learnt, by fault.</summary>
    public double[] Chances(CaseStory story) => Sparse(Priors(story), new StoryWeigher(rules, story).Whole).Chances(OddsCount.Ones(rules.Faults));

    /// <summary>By set: P(the set, and that the rider was silent of what was not said), up to a factor.</summary>
    private double[] Priors(CaseStory story)
    {
        if (silence is null) return sets.Priors(rules.OddsOf(story.Facts));
        var (priors, quiet) = (sets.Priors(rules.ExpectedOdds(story.Facts)), silence.Of(story));
        for (var set = 0; set < priors.Length; set++) priors[set] *= quiet[set];
        return priors;
    }

    /// <param name="likelihood">Of a set.</param>
    private WeighedSets Sparse(double[] priors, Func<int, int, double> likelihood)
    {
        var (weights, sum) = (new double[priors.Length], 0.0);
        for (var set = 0; set < weights.Length; set++)
        {
            if (priors[set] == 0) continue;
            weights[set] = priors[set] * likelihood(sets.All[set].One, sets.All[set].Other);
            sum += weights[set];
        }

        var kept = Enumerable.Range(0, weights.Length).Where(set => weights[set] > Least * sum).ToArray();
        return new WeighedSets([.. kept.Select(s => sets.All[s].One)], [.. kept.Select(s => sets.All[s].Other)], [.. kept.Select(s => weights[s])]);
    }

    private Way[] Ways(StoryWeigher weigher, double[] priors, WeighedSets told)
    {
        var (ways, total, next) = (new List<Way>(), told.Weights.Sum(), 0);
        for (var i = 0; i < told.Weights.Length; i++)
        {
            while (sets.All[next] != (told.One[i], told.Other[i])) next++;
            if (told.Weights[i] < LeastWay * total) continue;
            foreach (var (course, chance) in weigher.Courses(told.One[i], told.Other[i]))
            {
                var weight = priors[next] * chance * weigher.Whole(course);
                if (weight >= LeastWay * total) ways.Add(new Way(course, weight));
            }
        }

        return [.. ways];
    }
}
