namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What it tells that a rider said nothing of a complaint: riders name the one or two that trouble them most, and not all that the bike does.</summary>
/// <remarks>
/// The coach takes silence for nothing, which is safe for one rider. Over many riders it is not: a cause with several complaints would be expected behind
/// each of them as if the others had never been heard of, and its odds would be learnt down though they are right. So here a complaint that the bike has stays
/// untold with one chance, the same for all, which is itself fitted to what the club's riders told; see <see cref="TellingHabits"/>.
/// </remarks>
/// <param name="rules">The rules without anything learnt.</param>
/// <param name="untold">P(a complaint stays untold | the bike does it), in [0, 1]; 1 takes silence for nothing.</param>
internal sealed class Silence(RuleSheet rules, PairSets sets, double untold)
{
    private readonly double[] all = Over(rules, sets, untold);

    public double Untold => untold;

    /// <summary>By set: P(all complaints but those that were spoken of stay untold).</summary>
    public double[] Of(CaseStory story)
    {
        var quiet = (double[])all.Clone();
        foreach (var spoken in Spoken(story))
        {
            var sheet = rules.Finding(spoken);
            for (var set = 0; set < quiet.Length; set++) quiet[set] /= Quiet(sheet, sets.All[set], untold);
        }

        return quiet;
    }

    /// <summary>ln P(just these complaints were told | one at least was told).</summary>
    /// <param name="priors">By set.</param>
    public double LogLikelihood(CaseStory story, double[] priors)
    {
        var (weigher, quiet, said, any) = (new StoryWeigher(rules, story), Of(story), 0.0, 0.0);
        for (var set = 0; set < quiet.Length; set++)
        {
            said += priors[set] * weigher.Complaining(sets.All[set].One, sets.All[set].Other) * quiet[set];
            any += priors[set] * (1 - all[set]);
        }

        return (story.Complaints.Length * Math.Log(1 - untold)) + Math.Log(said / any);
    }

    private IEnumerable<int> Spoken(CaseStory story) =>
        story.Complaints.Select(c => c.Finding).Concat(story.Hints.Select(h => h.Finding)).Distinct().Where(rules.Complaints.Contains);

    private static double[] Over(RuleSheet rules, PairSets sets, double untold)
    {
        var quiet = new double[sets.All.Length];
        Array.Fill(quiet, 1);
        foreach (var complaint in rules.Complaints)
        {
            var sheet = rules.Finding(complaint);
            for (var set = 0; set < quiet.Length; set++) quiet[set] *= Quiet(sheet, sets.All[set], untold);
        }

        return quiet;
    }

    private static double Quiet(FindingSheet sheet, (int One, int Other) set, double untold) => untold + ((1 - untold) * sheet.Normal(set.One, set.Other));
}
