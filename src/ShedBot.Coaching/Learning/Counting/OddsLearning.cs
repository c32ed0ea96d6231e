namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What was counted of one fault.</summary>
/// <param name="Times">What its odds are to be multiplied with.</param>
internal sealed record OddsCounted(int Fault, double Times, double Counted, double Expected, int Cases, int Mended, int Members);

/// <summary>From weighed cases to the odds of faults, within the limits.</summary>
internal sealed class OddsLearning(RuleSheet rules, LearningLimits limits, IReadOnlyList<WeighedCase> cases, PairSets sets)
{
    /// <summary>A case bears on a fault that its opening makes this likely, or its whole story likelier than not.</summary>
    private const double Bears = 0.02, LikelierThanNot = 0.5;

    /// <summary>A fault that is nearly all that is expected cannot be reckoned beside others; the step is then kept this short of infinite.</summary>
    private const double MostShare = 0.7;

    private readonly OddsCount count = new(sets, cases, rules.Faults);

    /// <param name="wanted">Whether a fault is to be looked at.</param>
    /// <param name="mayFall">Whether its odds may go down.</param>
    /// <returns>The faults on which enough cases bear.</returns>
    public List<OddsCounted> Learn(Func<int, bool> wanted, Func<int, bool> mayFall)
    {
        var (bearing, free, least) = (Bearings(), new bool[rules.Faults], new double[rules.Faults]);
        for (var fault = 0; fault < free.Length; fault++)
        {
            free[fault] = !rules.Model.Faults[fault].IsOther && wanted(fault) && bearing[fault].Enough(limits);
            least[fault] = mayFall(fault) ? 1 / limits.MostFactor : 1;
        }

        var times = count.Fit(free, least, limits.MostFactor);
        var held = WithoutAnyOne(times);
        var ones = count.Ones();
        var (counted, expected) = (count.Counted(held), count.Expected(ones, withAnchor: false));
        return
        [
            .. Enumerable.Range(0, free.Length).Where(f => free[f])
                .Select(f => new OddsCounted(f, held[f], counted[f], expected[f], bearing[f].Cases, bearing[f].Mended, bearing[f].Members)),
        ];
    }

    private Bearing[] Bearings()
    {
        var (bearings, ones) = (Enumerable.Range(0, rules.Faults).Select(_ => new Bearing()).ToArray(), count.Ones());
        foreach (var c in cases)
        {
            var (before, after) = (count.Chances(c.Opened, c.Odds, ones), count.Chances(c.Told, c.Odds, ones));
            for (var fault = 0; fault < before.Length; fault++)
            {
                if (before[fault] >= Bears || after[fault] >= LikelierThanNot) bearings[fault].Note(c.Member, c.Story.Mended);
            }
        }

        return bearings;
    }

    /// <summary>Each factor held to what is left of it when the member who moves it most is left out.</summary>
    private double[] WithoutAnyOne(double[] times)
    {
        var (faults, members) = (rules.Faults, cases.Max(c => c.Member) + 1);
        var (counted, expected) = (new double[members][], new double[members][]);
        var (fitted, all, shared, ones) = (new double[faults], new double[faults], new double[faults], count.Ones());
        foreach (var c in cases)
        {
            counted[c.Member] ??= new double[faults];
            expected[c.Member] ??= new double[faults];
            var (word, before, after) = (count.Chances(c.Opened, c.Odds, ones), count.Chances(c.Opened, c.Odds, times), count.Chances(c.Told, c.Odds, times));
            for (var fault = 0; fault < faults; fault++)
            {
                fitted[fault] += (c.Weight * after[fault]) + (c.Anchor * word[fault]);
                counted[c.Member][fault] += c.Weight * after[fault];
                expected[c.Member][fault] += c.Weight * before[fault];
                all[fault] += (c.Weight + c.Anchor) * before[fault];
                shared[fault] += (c.Weight + c.Anchor) * before[fault] * before[fault];
            }
        }

        var held = (double[])times.Clone();
        for (var fault = 0; fault < faults; fault++)
        {
            if (times[fault] == 1 || all[fault] <= 0) continue;
            var sharpness = 1 / (1 - Math.Min(MostShare, shared[fault] / all[fault]));
            for (var member = 0; member < members; member++)
            {
                // At the fit counts and expectations agree; what a member takes out of the one and the other says where it would lie without them.
                var (has, hopes) = (fitted[fault] - counted[member][fault], all[fault] - expected[member][fault]);
                var without = times[fault] * Math.Pow(Math.Max(has, 0) / hopes, sharpness);
                held[fault] = times[fault] > 1 ? Math.Max(1, Math.Min(held[fault], without)) : Math.Min(1, Math.Max(held[fault], without));
            }
        }

        return held;
    }
}
