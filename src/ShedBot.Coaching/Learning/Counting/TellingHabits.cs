namespace ShedBot.Coaching.Learning.Counting;

/// <summary>How a club's riders tell their troubles: how often they leave one out, and how often they name a wrong one.</summary>
/// <remarks>
/// The coach doubts each complaint by a fixed measure, which is safe for one rider. Over many it is not: where hardly anybody names a wrong one, the rules would
/// expect every complaint to be told that often by bikes that do not have it, and what really gives it would be learnt up though its odds are right.
/// </remarks>
internal static class TellingHabits
{
    /// <summary>What is tried; finer steps move no odds that would be told.</summary>
    private static readonly double[] Untold = [0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.65, 0.8, 0.95];

    /// <summary>The same for the coach's doubt about complaints: what it is multiplied with. Riders are never taken to err more often than the coach expects.</summary>
    private static readonly double[] Doubts = [0.03, 0.1, 0.3, 1];

    /// <summary>The likeliest by the complaints that were told, given that one at least was told: by turns over a grid of each.</summary>
    /// <param name="weights">What each story counts for.</param>
    /// <returns>The stories with the fitted doubt, and what silence tells.</returns>
    public static (List<CaseStory> Stories, Silence Silence) Fitted(RuleSheet rules, PairSets sets, IReadOnlyList<CaseStory> stories, double[] weights)
    {
        var groups = stories.Select((s, i) => (Story: s, Weight: weights[i])).GroupBy(s => s.Story.Opening, StringComparer.Ordinal)
            .Select(g => (g.First().Story, Weight: g.Sum(s => s.Weight), Priors: sets.Priors(rules.ExpectedOdds(g.First().Story.Facts)))).ToList();
        var silences = Untold.Select(u => new Silence(rules, sets, u)).ToArray();
        var (silence, doubt) = (silences[0], Doubts[^1]);
        for (var turn = 0; turn < 2; turn++)
        {
            silence = silences.MaxBy(s => Likelihood(s, doubt))!;
            doubt = Doubts.MaxBy(d => Likelihood(silence, d));
        }

        return ([.. stories.Select(s => Doubted(s, doubt))], silence);

        double Likelihood(Silence silence, double doubt) => groups.Sum(g => g.Weight * silence.LogLikelihood(Doubted(g.Story, doubt), g.Priors));
    }

    private static CaseStory Doubted(CaseStory story, double doubt) => story with
    {
        Complaints = [.. story.Complaints.Select(c => c with { Unmeant = c.Unmeant * doubt, Missed = c.Missed * doubt })],
    };
}
