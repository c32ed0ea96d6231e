namespace ShedBot.Coaching.Learning.Counting;

/// <summary>One way in which a case may have gone: which faults there were, and at which trial each was mended.</summary>
/// <param name="OneUntil">The trial that mended the first fault, from 0; the number of trials when none did.</param>
/// <param name="OtherUntil">The same for the second; 0 or more where there is none.</param>
internal readonly record struct Course(int One, int Other, int OneUntil, int OtherUntil)
{
    /// <summary>The fault if it is still there in a stretch, else -1.</summary>
    public int OneIn(int stretch) => OneUntil >= stretch ? One : -1;

    public int OtherIn(int stretch) => Other >= 0 && OtherUntil >= stretch ? Other : -1;
}

/// <summary>How likely a case's story is for each set of faults, by the same law by which the coach believes, summed over what each trial may have mended.</summary>
/// <remarks>
/// A complaint is a finding like any other: each of its causes strikes it by its own chance, and it is gone when no strike is left. So a fault that gives no
/// complaint may stay behind when the trouble is gone, and is not ruled out by 'it held'.
/// </remarks>
internal sealed class StoryWeigher
{
    private readonly CaseStory story;
    private readonly double[][] mends;
    private readonly (FindingSheet Sheet, double[] Weights)[][] stretches;
    private readonly (FindingSheet Sheet, double[] Weights)[] hints;
    private readonly (FindingSheet Sheet, double Unmeant, double Missed)[] complaints;

    public StoryWeigher(RuleSheet rules, CaseStory story)
    {
        this.story = story;
        mends = [.. story.Trials.Select(t => rules.Mends(rules.Model.RepairAt(t.Repair)))];
        hints = [.. story.Hints.Select(h => (rules.Finding(h.Finding), h.Raw))];
        complaints = [.. story.Complaints.Select(c => (rules.Finding(c.Finding), c.Unmeant, c.Missed))];
        stretches = [.. story.Stretches.Select((s, at) => (at == 0 ? Joined(s) : s).Select(f => (rules.Finding(f.Finding), f.Raw)).ToArray())];
    }

    public int Trials => story.Trials.Length;

    /// <summary>P(what the rider came with | exactly these faults).</summary>
    public double Opening(int one, int other)
    {
        var weight = Complaining(one, other);
        foreach (var (sheet, weights) in hints) weight *= sheet.Weigh(weights, one, other);
        return weight;
    }

    /// <summary>P(the complaints that were told | exactly these faults).</summary>
    public double Complaining(int one, int other)
    {
        var weight = 1.0;
        foreach (var (sheet, unmeant, missed) in complaints)
        {
            var normal = sheet.Normal(one, other);
            weight *= (unmeant * normal) + ((1 - missed) * (1 - normal));
        }

        return weight;
    }

    /// <summary>P(the whole story | exactly these faults to begin with).</summary>
    public double Whole(int one, int other)
    {
        if (!Touched(one) && !Touched(other)) return Whole(new Course(one, other, Trials, Trials));
        var sum = 0.0;
        foreach (var (course, chance) in Courses(one, other)) sum += chance * Whole(course);
        return sum;
    }

    /// <summary>Every way in which the trials may have mended the faults, with its chance.</summary>
    public IEnumerable<(Course Course, double Chance)> Courses(int one, int other)
    {
        for (var a = 0; a <= Trials; a++)
        {
            var first = Until(one, a);
            if (first == 0) continue;
            for (var b = other < 0 ? Trials : 0; b <= Trials; b++)
            {
                var second = other < 0 ? 1 : Until(other, b);
                if (second > 0) yield return (new Course(one, other, a, b), first * second);
            }
        }
    }

    /// <summary>P(the whole story | the faults, and what each trial mended).</summary>
    public double Whole(Course course)
    {
        var weight = 1.0;
        for (var at = 0; at < stretches.Length; at++)
        {
            foreach (var (sheet, weights) in stretches[at]) weight *= sheet.Weigh(weights, course.OneIn(at), course.OtherIn(at));
        }

        return weight * Told(course);
    }

    /// <summary>P(the complaints and what was told of the trials | the course): summed over the trial after which the trouble was gone.</summary>
    private double Told(Course course)
    {
        var (all, gone) = (1.0, 1.0);
        foreach (var (sheet, unmeant, missed) in complaints)
        {
            var normal = sheet.Normal(course.One, course.Other);
            all *= (unmeant * normal) + ((1 - missed) * (1 - normal));
            gone *= unmeant * normal;
        }

        if (Trials == 0) return all;
        var sum = gone * Telling(course, 0);
        for (var trial = 1; trial <= Trials; trial++)
        {
            var by = Gone(course, trial);
            if (by > gone) sum += (by - gone) * Telling(course, trial);
            gone = Math.Max(gone, by);
        }

        return sum + (Math.Max(0, all - gone) * Telling(course, Trials + 1));
    }

    /// <summary>P(all complaints were told, and none is left in this stretch | the course).</summary>
    private double Gone(Course course, int stretch)
    {
        var gone = 1.0;
        foreach (var (sheet, unmeant, missed) in complaints)
        {
            var before = sheet.Normal(course.One, course.Other);
            var now = sheet.Normal(course.OneIn(stretch), course.OtherIn(stretch));
            gone *= ((1 - missed) * (now - before)) + (unmeant * before);
        }

        return gone;
    }

    /// <param name="goneAfter">The trial after which the trouble was gone, from 1; 0 for never there, above the last for still there.</param>
    private double Telling(Course course, int goneAfter)
    {
        var weight = 1.0;
        for (var trial = 0; trial < Trials; trial++)
            weight *= TrialLaw.Told(story.Trials[trial].Said, trial + 1 >= goneAfter, course.OneUntil == trial || (course.Other >= 0 && course.OtherUntil == trial));
        return weight;
    }

    /// <summary>P(the fault is mended by just this trial), or by none for the number of trials; 1 for none where no fault is.</summary>
    private double Until(int fault, int trial)
    {
        var chance = 1.0;
        for (var before = 0; before < trial; before++) chance *= 1 - mends[before][fault];
        return trial < Trials ? chance * mends[trial][fault] : chance;
    }

    private bool Touched(int fault)
    {
        if (fault < 0) return false;
        foreach (var mend in mends)
        {
            if (mend[fault] > 0) return true;
        }

        return false;
    }

    private IEnumerable<SaidOf> Joined(IReadOnlyCollection<SaidOf> first)
    {
        var answered = first.Select(s => s.Finding).ToHashSet();
        return first.Select(s => story.Hints.FirstOrDefault(h => h.Finding == s.Finding) is { } hint ? s with { Weights = [.. s.Weights.Zip(hint.Weights, (a, b) => a * b)] } : s)
            .Concat(story.Hints.Where(h => !answered.Contains(h.Finding)));
    }
}
