namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What each case counts for.</summary>
internal static class CaseWeights
{
    private const double DaysInMonth = 30;

    /// <summary>Fades old cases, then scales down the cases of each member who would count for more than their share.</summary>
    /// <returns>Aligned with the stories; each in (0, 1].</returns>
    public static double[] Of(IReadOnlyList<CaseStory> stories, LearningLimits limits, DateTimeOffset now)
    {
        var weights = stories.Select(s => Math.Pow(limits.FadePerMonth, Math.Max(0, (now - s.At).TotalDays) / DaysInMonth)).ToArray();
        var most = Math.Max(limits.MemberCases, limits.MemberShare * weights.Sum());
        foreach (var member in Enumerable.Range(0, stories.Count).GroupBy(i => stories[i].Member))
        {
            var sum = member.Sum(i => weights[i]);
            if (sum <= most) continue;
            foreach (var i in member) weights[i] *= most / sum;
        }

        return weights;
    }

    /// <summary>
    /// The prior of each complaint's table of causes as cases that never were: of each complaint that was told, as many as the sample size, shared out
    /// between the cases that told it, each of them expecting what the rules alone expect.
    /// </summary>
    /// <returns>Aligned with the stories.</returns>
    public static double[] Anchors(IReadOnlyList<CaseStory> stories, double[] weights, double sampleSize)
    {
        var told = new Dictionary<int, double>();
        for (var i = 0; i < stories.Count; i++)
        {
            foreach (var complaint in stories[i].Complaints)
                told[complaint.Finding] = told.GetValueOrDefault(complaint.Finding) + (weights[i] / stories[i].Complaints.Length);
        }

        return [.. stories.Select((s, i) => s.Complaints.Sum(c => sampleSize * weights[i] / s.Complaints.Length / told[c.Finding]))];
    }
}
