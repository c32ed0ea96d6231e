using ShedBot.Coaching.Learning.Proving;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What was counted of one fault.</summary>
/// <param name="Times">What its odds are to be multiplied with.</param>
internal sealed record OddsCounted(int Fault, double Times, double Counted, double Expected, int Cases, int Mended, int Members);

/// <summary>From weighed cases to the odds of faults, within the limits. Its numbers are factors, by fault.</summary>
internal sealed class OddsLearning : ILearnable
{
    /// <summary>A case bears on a fault that its opening makes this likely, or its whole story likelier than not.</summary>
    private const double Bears = 0.02, LikelierThanNot = 0.5;

    /// <summary>A fault that is nearly all that is expected cannot be reckoned beside others; the step is then kept this short of infinite.</summary>
    private const double MostShare = 0.7;

    private readonly RuleSheet rules;
    private readonly LearningLimits limits;
    private readonly CaseFolds folds;
    private readonly Bearing[] bearings;
    private readonly double[] least;

    /// <param name="wanted">Whether a fault is to be looked at.</param>
    /// <param name="mayFall">Whether its odds may go down.</param>
    public OddsLearning(RuleSheet rules, LearningLimits limits, CaseFolds folds, Func<int, bool> wanted, Func<int, bool> mayFall)
    {
        (this.rules, this.limits, this.folds) = (rules, limits, folds);
        Unlearnt = OddsCount.Ones(rules.Faults);
        bearings = Bearings();
        Free = [.. bearings.Select((b, fault) => !rules.Model.Faults[fault].IsOther && wanted(fault) && b.Enough(limits))];
        least = [.. Enumerable.Range(0, rules.Faults).Select(fault => mayFall(fault) ? 1 / limits.MostFactor : 1)];
    }

    public double[] Unlearnt { get; }

    public bool[] Free { get; }

    public double[] Learn(double sampleSize, int fold, bool[] free)
    {
        var cases = folds.Training(fold).Select(at => folds.Cases[at]).ToList();
        var anchors = CaseWeights.Anchors([.. cases.Select(c => c.Story)], [.. cases.Select(c => c.Weight)], sampleSize);
        var times = new OddsCount(cases, anchors, rules.Faults).Fit(free, least, limits.MostFactor);
        return [.. WithoutAnyOne(cases, anchors, times).Select(t => Math.Max(t, 1 / t) >= limits.LeastChange ? t : 1)];
    }

    public Func<WeighedCase, double> Gain(double[] numbers, int fold)
    {
        var opened = new Dictionary<WeighedSets, double>(ReferenceEqualityComparer.Instance);
        return c =>
        {
            if (!opened.TryGetValue(c.Opened, out var opening)) opened[c.Opened] = opening = Math.Log(c.Opened.Sum(numbers) / c.Opened.Weights.Sum());
            return Math.Log(c.Told.Sum(numbers) / c.Told.Weights.Sum()) - opening;
        };
    }

    /// <summary>The faults whose odds move, with what was counted of them.</summary>
    public IEnumerable<OddsCounted> Counted(double[] times)
    {
        var count = new OddsCount(folds.Cases, new double[folds.Cases.Count], rules.Faults);
        var (counted, expected) = (count.Counted(times), count.Expected(Unlearnt, withAnchor: false));
        return Enumerable.Range(0, rules.Faults).Where(f => Free[f] && times[f] != 1)
            .Select(f => new OddsCounted(f, times[f], counted[f], expected[f], bearings[f].Cases, bearings[f].Mended, bearings[f].Members));
    }

    private Bearing[] Bearings()
    {
        var (bearing, expected) = (Enumerable.Range(0, rules.Faults).Select(_ => new Bearing()).ToArray(), new Dictionary<WeighedSets, double[]>(ReferenceEqualityComparer.Instance));
        foreach (var c in folds.Cases)
        {
            if (!expected.TryGetValue(c.Opened, out var before)) expected[c.Opened] = before = c.Opened.Chances(Unlearnt);
            var after = c.Told.Chances(Unlearnt);
            for (var fault = 0; fault < before.Length; fault++)
            {
                if (before[fault] >= Bears || after[fault] >= LikelierThanNot) bearing[fault].Note(c.Member, c.Story.Mended);
            }
        }

        return bearing;
    }

    /// <summary>Each factor held to what is left of it when the member who moves it most is left out.</summary>
    private double[] WithoutAnyOne(List<WeighedCase> cases, double[] anchors, double[] times)
    {
        var (faults, members) = (rules.Faults, cases.Max(c => c.Member) + 1);
        var (counted, expected) = (new double[members][], new double[members][]);
        var (fitted, all, shared) = (new double[faults], new double[faults], new double[faults]);
        var openings = new Dictionary<WeighedSets, (double[] Word, double[] Before)>(ReferenceEqualityComparer.Instance);
        for (var at = 0; at < cases.Count; at++)
        {
            var (c, anchor) = (cases[at], anchors[at]);
            counted[c.Member] ??= new double[faults];
            expected[c.Member] ??= new double[faults];
            if (!openings.TryGetValue(c.Opened, out var opening)) openings[c.Opened] = opening = (c.Opened.Chances(Unlearnt), c.Opened.Chances(times));
            var ((word, before), after) = (opening, c.Told.Chances(times));
            for (var fault = 0; fault < faults; fault++)
            {
                fitted[fault] += (c.Weight * after[fault]) + (anchor * word[fault]);
                counted[c.Member][fault] += c.Weight * after[fault];
                expected[c.Member][fault] += c.Weight * before[fault];
                all[fault] += (c.Weight + anchor) * before[fault];
                shared[fault] += (c.Weight + anchor) * before[fault] * before[fault];
            }
        }

        var held = (double[])times.Clone();
        for (var fault = 0; fault < faults; fault++)
        {
            if (times[fault] == 1 || all[fault] <= 0) continue;
            var sharpness = 1 / (1 - Math.Min(MostShare, shared[fault] / all[fault]));
            for (var member = 0; member < members; member++)
            {
                if (counted[member] is null) continue;
                // At the fit counts and expectations agree; what a member takes out of the one and the other says where it would lie without them.
                var (has, hopes) = (fitted[fault] - counted[member][fault], all[fault] - expected[member][fault]);
                var without = times[fault] * Math.Pow(Math.Max(has, 0) / hopes, sharpness);
                held[fault] = times[fault] > 1 ? Math.Max(1, Math.Min(held[fault], without)) : Math.Min(1, Math.Max(held[fault], without));
            }
        }

        return held;
    }
}
