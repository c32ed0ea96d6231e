using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using Xunit.Abstractions;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>
/// Models far too big to enumerate, held against Quickscore (Heckerman 1989), which is exact over sets of every size where findings are known for
/// certain.
/// </summary>
public class LargeModelTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(64, 0.01)]
    [InlineData(64, 0.02)]
    [InlineData(400, 0.002)]
    [InlineData(400, 0.005)]
    [InlineData(640, 0.001)]
    public void Infer_ManyFaults_IsCloseToTheExactSumAndWithinItsBound(int faults, double prior)
    {
        var model = Draw(new Random(7), faults, prior);
        var truth = new[] { 1, 3 };
        var random = new Random(11);
        var known = Enumerable.Range(0, model.Findings.Length)
            .Where(f => f < 6 || model.Findings[f].Links.Any(l => l.Fault is "f1" or "f3")).Take(14)
            .Select(f => (Finding: f, There: random.NextDouble() < new StateChances(model, f).Given(truth)[1])).ToList();
        var evidence = known.Select(k => new FindingTold(model.Findings[k.Finding].Id, k.There ? Finding.Yes : Finding.No, default)).ToList();

        var exact = Quickscore.Sum(model, [.. known.Where(k => k.There).Select(k => k.Finding)], [.. known.Where(k => !k.There).Select(k => k.Finding)]);
        var belief = Inferrer.Infer(model, evidence);
        var worst = Enumerable.Range(0, faults).Max(f => Math.Abs(exact.MarginalGivenTrouble(f) - belief.Marginal(f)));
        output.WriteLine($"{faults} faults: worst difference {worst:F4}, promised {belief.LeftOut:F4}, {belief.Sets.Length} sets kept.");
        Assert.Equal(3, belief.LargestSet);
        Assert.InRange(belief.Sets.Length, 1, 60_000);
        Assert.True(worst <= belief.LeftOut, $"{worst} is more than was promised");
        Assert.True(worst < 0.05, $"{worst} is too far off to be of use");
    }

    private static DiagnosticModel Draw(Random random, int faults, double prior)
    {
        var drawn = Enumerable.Range(0, faults).Select(i => new Fault($"f{i}", prior * (0.3 + (1.4 * random.NextDouble())))).ToList();
        var findings = Enumerable.Range(0, faults).Select(i => Finding.YesNo(
            $"g{i}", 0.03, Enumerable.Range(0, 4).Select(_ => random.Next(i < 8 ? 8 : faults)).Distinct().Select(f => ($"f{f}", 0.5 + (0.45 * random.NextDouble())))));
        return DiagnosticModel.Create(drawn, findings, [], [], [], 50);
    }
}
