using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>
/// Invented problems, drawn with a seed: a few faults and 'other' with no repair, checks that one to three faults inform, one repair a fault of
/// which a fifth partly mend a second fault, help at one to four hours.
/// </summary>
internal static class RandomModels
{
    public static DiagnosticModel Base(int seed) => Make(new Random(seed), 3, 7, 0);

    /// <summary>Three in five steps are behind one of two covers.</summary>
    public static DiagnosticModel Clusters(int seed) => Make(new Random(10_000 + seed), 3, 7, 2);

    /// <summary>Weak checks with one wrong answer in ten.</summary>
    public static DiagnosticModel Noisy(int seed) => Make(new Random(20_000 + seed), 3, 7, 0, noisy: true);

    public static DiagnosticModel Big(int seed) => Make(new Random(30_000 + seed), 7, 8, 1);

    /// <summary>Another model with the same steps, whose priors, links, leaks and successes are off by normal noise on their log odds.</summary>
    public static DiagnosticModel Misjudged(DiagnosticModel truth, double deviation, int seed)
    {
        var random = new Random(seed);
        return DiagnosticModel.Create(
            truth.Faults.Select(f => f with { Prior = Off(f.Prior) }),
            truth.Findings.Select(f => Finding.YesNo(f.Id, Off(f.Leak[1]), f.Links.Select(l => (l.Fault, Off(l.Net[1]))))),
            truth.Checks,
            truth.Repairs.Select(r => r with { Fixes = [.. r.Fixes.Select(f => f with { Success = Off(f.Success) })] }),
            truth.Covers,
            truth.HelpCost);

        double Off(double chance)
        {
            var normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            return 1 / (1 + Math.Exp(-(Math.Log(chance / (1 - chance)) + (deviation * normal))));
        }
    }

    private static DiagnosticModel Make(Random random, int fewest, int below, int coverCount, bool noisy = false)
    {
        var count = random.Next(fewest, below);
        var shares = Enumerable.Range(0, count).Select(_ => -Math.Log(1 - random.NextDouble())).ToArray();
        var other = Between(0.02, 0.1);
        var faults = shares.Select((s, i) => new Fault($"f{i}", s / shares.Sum() * (1 - other))).Append(new Fault("other", other, true));
        var covers = Enumerable.Range(0, coverCount).Select(i => new Cover($"k{i}", new(Between(4, 25)))).ToList();
        var checks = Enumerable.Range(0, random.Next(fewest, below)).Select(i => DrawCheck(i)).ToList();
        var repairs = Enumerable.Range(0, count).Select(i => DrawRepair(i)).ToList();
        return DiagnosticModel.Create(faults, checks.Select(c => c.Finding), checks.Select(c => c.Check), repairs, covers, Between(60, 240));

        double Between(double low, double high) => low + ((high - low) * random.NextDouble());

        string? Behind() => covers.Count > 0 && random.NextDouble() < 0.6 ? covers[random.Next(covers.Count)].Id : null;

        (Finding Finding, Check Check) DrawCheck(int i)
        {
            var informed = Enumerable.Range(0, count).OrderBy(_ => random.Next()).Take(random.Next(1, 4)).ToList();
            var finding = Finding.YesNo(
                $"g{i}", noisy ? Between(0.1, 0.3) : Between(0.01, 0.15),
                [.. informed.Select(f => ($"f{f}", noisy ? Between(0.55, 0.85) : Between(0.75, 0.98)))]);
            return (finding, new($"c{i}", $"g{i}", new(Between(1, 10)), AnswerError.Even(noisy ? 0.1 : 0), Behind()));
        }

        Repair DrawRepair(int i)
        {
            var fixes = new List<Fix> { new($"f{i}", Between(0.7, 1)) };
            if (random.NextDouble() < 0.2) fixes.Add(new($"f{(i + 1 + random.Next(count - 1)) % count}", Between(0.3, 0.7)));
            return new($"r{i}", new(5 * Math.Pow(12, random.NextDouble())), [.. fixes], Behind());
        }
    }
}
