using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>A failed repair never clears a fault that it may have missed: w_f becomes w_f (1 - s).</summary>
public class RepairFailedTests
{
    private const double Close = 1e-12;

    [Fact]
    public void InferSingle_RepairFailed_ScalesTheFaultByItsChanceToFail()
    {
        // S .3 mended with .8: .5, .06, .2 over .76.
        var belief = Inferrer.InferSingle(Three(), [new RepairFailed("S")]);
        Assert.Equal(.5 / .76, belief.Marginal("F"), Close);
        Assert.Equal(.06 / .76, belief.Marginal("S"), Close);
        Assert.Equal(.2 / .76, belief.Marginal("X"), Close);
        Assert.Equal(Math.Log(.76), belief.LogEvidence, Close);
    }

    [Fact]
    public void InferSingle_SameRepairFailedTwice_ScalesTwice()
    {
        var belief = Inferrer.InferSingle(Three(), [new RepairFailed("S"), new RepairFailed("S")]);
        Assert.Equal(.3 * .04 / (.5 + .012 + .2), belief.Marginal("S"), Close);
    }

    [Fact]
    public void Infer_RepairMendsOneOfTwo_BeliefIsAboutTheMachineNow()
    {
        // Odds F 1, S 3/7, X 1/4; up to two faults. After 'S' (.8) failed, by hand: sets without S keep their weight and get .8 of the set with S.
        double f = 1, s = 3.0 / 7, x = .25;
        double now_f = f + (.8 * f * s), now_x = x + (.8 * x * s), now_s = .2 * s, fs = .2 * f * s, xs = .2 * x * s, fx = f * x;
        var z = now_f + now_x + now_s + fs + xs + fx;
        var belief = Inferrer.Infer(Three(), [new RepairFailed("S")], new(2, 2));
        Assert.Equal((now_f + fs + fx) / z, belief.Marginal("F"), Close);
        Assert.Equal((now_s + fs + xs) / z, belief.Marginal("S"), Close);
        Assert.Equal((now_x + xs + fx) / z, belief.Marginal("X"), Close);
    }

    [Fact]
    public void Infer_BetterButNotGone_SpeaksForSeveralFaults()
    {
        static double S(bool better) => Inferrer.Infer(Three(), [new RepairFailed("S", better)], new(3, 3)).Sets
            .Where(s => s.Faults.Length == 1 && s.Faults[0] != 1).Sum(s => s.Probability);

        // 'Better' can come of S mended beside another fault; then one fault is left, which is neither S nor, most likely, a lone one from before.
        Assert.True(S(better: true) > S(better: false));
        var single = Inferrer.InferSingle(Three(), [new RepairFailed("S", Better: true)]);
        Assert.Equal(.06 / .76, single.Marginal("S"), Close);
    }

    [Fact]
    public void Infer_AnswersAfterARepair_AreAboutTheMachineAfterIt()
    {
        // The finding was there; S is surely mended or not, and now it is gone: before and after do not replace each other.
        var model = Three();
        var before = Inferrer.InferSingle(model, [.. Answers(("c", true)), new RepairFailed("S")]);
        var after = Inferrer.InferSingle(model, [.. Answers(("c", true)), new RepairFailed("S"), .. Answers(("c", false))]);
        Assert.Equal(before.Marginal("S") * .09 / (1 - before.Marginal("S")), after.Marginal("S") * .9 / (1 - after.Marginal("S")), Close);
    }
}
