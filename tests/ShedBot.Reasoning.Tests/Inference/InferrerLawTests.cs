using CsCheck;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>Laws that hold for any model, held against full enumeration.</summary>
public class InferrerLawTests
{
    private const double Close = 1e-9;

    [Fact]
    public void Infer_AnyCase_EqualsFullEnumeration() => RandomCase.Any().Sample(c =>
    {
        var n = c.Model.Faults.Length;
        foreach (var largest in new[] { 1, 2, n })
        {
            var brute = BruteForce.Sum(c.Model, c.Evidence, largest);
            var belief = Inferrer.Infer(c.Model, c.Evidence, new(largest, largest));
            for (var f = 0; f < n; f++) Assert.Equal(brute.Marginal(f), belief.Marginal(f), Close);
            Assert.Equal(brute.LogEvidence, belief.LogEvidence, Close);
            Assert.Equal(1, belief.Sets.Sum(s => s.Probability), Close);
            if (largest == n) Assert.Equal(0, belief.LeftOut);
        }
    });

    [Fact]
    public void Infer_AnyCaseAndBound_LeftOutBoundsTheError() => RandomCase.Any(9).Sample(c =>
    {
        var n = c.Model.Faults.Length;
        var whole = BruteForce.Sum(c.Model, c.Evidence, n);
        for (var largest = 1; largest <= Math.Min(3, n); largest++)
        {
            var belief = Inferrer.Infer(c.Model, c.Evidence, new(largest, largest));
            for (var f = 0; f < n; f++) Assert.InRange(belief.Marginal(f), whole.Marginal(f) - belief.LeftOut - 1e-12, whole.Marginal(f) + belief.LeftOut + 1e-12);

            // Never worse than the plain bound: prior mass left out, over the bounded sum of prior times likelihood.
            var bounded = BruteForce.Sum(c.Model, c.Evidence, largest);
            Assert.InRange(belief.LeftOut, 0, Math.Min(1, (whole.Prior - bounded.Prior) / bounded.Joint.Sum()) + 1e-9);
        }
    });

    [Fact]
    public void Infer_TooManySetsToLookAtAll_LeftOutStillBoundsTheError() => RandomCase.Any(9).Sample(c =>
    {
        var n = c.Model.Faults.Length;
        var whole = BruteForce.Sum(c.Model, c.Evidence, n);
        foreach (var most in new[] { 1, n + 1, n + 4, n + 12 })
        {
            var belief = Inferrer.Infer(c.Model, c.Evidence, new(2, 3, 0.01, most));
            Assert.InRange(belief.Sets.Length, 1, Math.Max(n, most));
            for (var f = 0; f < n; f++) Assert.InRange(belief.Marginal(f), whole.Marginal(f) - belief.LeftOut - 1e-12, whole.Marginal(f) + belief.LeftOut + 1e-12);
        }
    });

    [Fact]
    public void Infer_NoRepairBetween_OrderOfEvidenceDoesNotMatter() =>
        Gen.Select(RandomCase.Any(repairs: false), Gen.Int[0, 1000]).Sample((c, seed) =>
        {
            var shuffled = c.Evidence.ToArray();
            new Random(seed).Shuffle(shuffled);
            var (one, other) = (Inferrer.Infer(c.Model, c.Evidence), Inferrer.Infer(c.Model, shuffled));
            for (var f = 0; f < c.Model.Faults.Length; f++) Assert.Equal(one.Marginal(f), other.Marginal(f), 1e-12);
        });

    [Fact]
    public void InferSingle_AnyCase_IsBayesOverOneFault() => RandomCase.Any(repairs: false).Sample(c =>
    {
        // With one fault each, sets weigh p_f / (1 - p_f) in one view and p_f in the other; everything else is the same.
        var odds = BruteForce.Sum(c.Model, c.Evidence, 1);
        var weights = c.Model.Faults.Select((fault, f) => odds.Marginal(f) * (1 - fault.Prior)).ToArray();
        var single = Inferrer.SingleFault(c.Model, c.Evidence);
        for (var f = 0; f < weights.Length; f++) Assert.Equal(weights[f] / weights.Sum(), single[f], Close);
    });

    [Fact]
    public void AnswerChances_AnyCase_PredictTheNextAnswer() => RandomCase.Any().Sample(c =>
    {
        // P(o | e) from the outlook must equal P(e, o) / P(e) from two inferences.
        var belief = Inferrer.Infer(c.Model, c.Evidence, new(2, 2));
        var last = c.Evidence.ToList().FindLastIndex(e => e is RepairFailed);
        foreach (var check in c.Model.Checks)
        {
            // Asked already, or hinted at: the answer would replace, not add.
            if (c.Evidence.Skip(last + 1).Any(e => e is CheckAnswered a && a.Check == check.Id)) continue;
            if (c.Evidence.Skip(last + 1).Any(e => e is FindingHinted h && h.Finding == check.Finding)) continue;
            var states = c.Model.Findings[c.Model.FindingAt(check.Finding)].States;
            for (var state = 0; state < states.Length; state++)
            {
                var predicted = Enumerable.Range(0, belief.Sets.Length).Sum(s => belief.Sets[s].Probability * belief.AnswerChances(c.Model.CheckAt(check.Id), s)[state]);
                var after = Inferrer.Infer(c.Model, [.. c.Evidence, new CheckAnswered(check.Id, states[state])], new(2, 2));
                Assert.Equal(Math.Exp(after.LogEvidence - belief.LogEvidence), predicted, Close);
            }
        }
    });

    [Fact]
    public void Quickscore_HardYesNo_EqualsBoundedSumsOverAllSizes() => RandomCase.Any(repairs: false, yesNoOnly: true).Sample(c =>
    {
        var n = c.Model.Faults.Length;
        var known = c.Evidence.OfType<CheckAnswered>()
            .GroupBy(a => c.Model.FindingAt(c.Model.Checks[c.Model.CheckAt(a.Check)].Finding))
            .Select(g => (Finding: g.Key, g.First().State)).ToList();
        var evidence = known.Select(k => new FindingTold(c.Model.Findings[k.Finding].Id, k.State, default)).ToList();
        var score = Quickscore.Sum(
            c.Model, [.. known.Where(k => k.State == Finding.Yes).Select(k => k.Finding)], [.. known.Where(k => k.State == Finding.No).Select(k => k.Finding)]);
        var belief = Inferrer.Infer(c.Model, evidence, new(n, n));
        var brute = BruteForce.Sum(c.Model, evidence, n);
        for (var f = 0; f < n; f++)
        {
            Assert.Equal(score.MarginalGivenTrouble(f), belief.Marginal(f), Close);
            Assert.Equal(score.MarginalGivenTrouble(f), brute.Marginal(f), Close);
        }
    });
}
