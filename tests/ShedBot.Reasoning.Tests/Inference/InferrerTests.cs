using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>
/// A three-fault example (F .5, S .3, X .2; S shows the finding with .9, leak .1) whose expected values were computed exactly by an independent
/// program from the formulas of Pearl 1988 (noisy-OR, virtual evidence) and Henrion 1989 (gross strengths).
/// </summary>
public class InferrerTests
{
    private const double Close = 1e-9;
    private static readonly CheckAnswered Yes = new("c", "yes"), No = new("c", "no");

    private static void Equal(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], actual[i], Close);
    }

    [Fact]
    public void SingleFault_Yes_BlamesWhatShowsIt() =>
        Equal([.1457725948, .7959183673, .0583090379], Round(Inferrer.SingleFault(Three(), [Yes])));

    [Fact]
    public void SingleFault_No_ClearsWhatWouldShowIt() =>
        Equal([.6849315068, .0410958904, .2739726027], Round(Inferrer.SingleFault(Three(), [No])));

    [Fact]
    public void SingleFault_StrengthReadAsGross_LeakIsInside()
    {
        var net = GrossStrength.ToNet([0.1, 0.9], [0.9, 0.1])[1];
        Equal([.1470588235, .7941176471, .0588235294], Round(Inferrer.SingleFault(Three(net: net), [Yes])));
    }

    [Fact]
    public void SingleFault_AnswersCanBeWrong_SaysLess() =>
        Equal([.1976284585, .7233201582, .0790513834], Round(Inferrer.SingleFault(Three(new(0.05, 0.10)), [Yes])));

    [Fact]
    public void SingleFault_SoftEvidence_OnlyTheRatioCounts()
    {
        double[] expected = [.3888380604, .4556267155, .1555352242];
        Equal(expected, Round(Inferrer.SingleFault(Three(), [new FindingHinted("c", [0.3, 0.7])])));
        Equal(expected, Round(Inferrer.SingleFault(Three(), [new FindingHinted("c", [30, 70])])));
    }

    [Fact]
    public void Infer_SeveralFaults_ConditionsOnAtLeastOne()
    {
        var belief = Inferrer.Infer(Three(), [Yes], new(LargestSet: 3));
        Equal([.5444444444, .8666666667, .2177777778], Round([belief.Marginal("F"), belief.Marginal("S"), belief.Marginal("X")]));
        Assert.Equal(0, belief.LeftOut);
    }

    [Fact]
    public void Infer_LeftOutTooMuch_RaisesTheBound()
    {
        Assert.Equal(3, Inferrer.Infer(Three(), [Yes]).LargestSet);
        Assert.Equal(2, Inferrer.Infer(Three(), [Yes], new(RaiseTo: 2)).LargestSet);
        Assert.Equal(2, Inferrer.Infer(Three(), [Yes], new(RaiseAbove: 0.5)).LargestSet);
    }

    [Fact]
    public void Infer_NotSureWasAnswered_BeliefDoesNotMove()
    {
        // 'Not sure' has no evidence record: what is left is the empty list, and that gives the priors back.
        var single = Inferrer.SingleFault(Three(), []);
        Equal([0.5, 0.3, 0.2], single);
        Equal(single, Inferrer.SingleFault(Three(), [new FindingHinted("c", [1, 1])]));
    }

    [Fact]
    public void Infer_SameCheckAnsweredTwice_LaterReplacesEarlier() =>
        Equal(Inferrer.SingleFault(Three(), [No]), Inferrer.SingleFault(Three(), [Yes, No]));

    [Fact]
    public void Infer_ToldTwice_LaterReplacesEarlier()
    {
        var error = AnswerError.Even(0.1);
        Equal(
            Inferrer.SingleFault(Three(), [new FindingTold("c", "no", error)]),
            Inferrer.SingleFault(Three(), [new FindingTold("c", "yes", error), new FindingTold("c", "no", error)]));
    }

    [Fact]
    public void Infer_HardAnswerAfterOrBeforeHint_HintIsDropped()
    {
        var hint = new FindingHinted("c", [1, 9]);
        Equal(Inferrer.SingleFault(Three(), [No]), Inferrer.SingleFault(Three(), [hint, No]));
        Equal(Inferrer.SingleFault(Three(), [No]), Inferrer.SingleFault(Three(), [No, hint]));
        Equal(
            Inferrer.SingleFault(Three(), [new FindingTold("c", "no", default)]),
            Inferrer.SingleFault(Three(), [hint, new FindingTold("c", "no", default)]));
    }

    [Fact]
    public void Infer_TwoChecksOfOneFinding_ShareItsTrueState()
    {
        // Both can be wrong one time in ten; the finding itself comes with the leak .1 unless S is there. By hand, for F and X:
        // .1 * .9 * .9 + .9 * .1 * .1 = .09; for S, P(c) = .91: .91 * .81 + .09 * .01 = .738.
        var model = DiagnosticModel.Create(
            [new("F", 0.5), new("S", 0.3), new("X", 0.2)],
            [Finding.YesNo("c", 0.1, ("S", 0.9))],
            [new Check("look", "c", new(1), AnswerError.Even(0.1)), new Check("feel", "c", new(1), AnswerError.Even(0.1))],
            [], [], 50);
        var z = (0.7 * 0.09) + (0.3 * 0.738);
        Equal([0.5 * 0.09 / z, 0.3 * 0.738 / z, 0.2 * 0.09 / z], Inferrer.SingleFault(model, [new CheckAnswered("look", "yes"), new CheckAnswered("feel", "yes")]));
    }

    [Fact]
    public void Infer_NothingCanGiveTheAnswers_ThrowsClearly()
    {
        var model = DiagnosticModel.Create(
            [new("F", 0.5), new("S", 0.3)], [Finding.YesNo("c", 0)], [new Check("c", "c", new(1))], [new("r", new(1), [new("F", 1), new("S", 1)])], [], 50);
        Assert.Throws<ImpossibleEvidenceException>(() => Inferrer.Infer(model, [Yes]));
        Assert.Throws<ImpossibleEvidenceException>(() => Inferrer.InferSingle(model, [Yes]));
        Assert.Throws<ImpossibleEvidenceException>(() => Inferrer.Infer(model, [new RepairFailed("r")]));
    }

    [Fact]
    public void Infer_OnlyLargerSetsExplainIt_BoundIsRaised()
    {
        var model = DiagnosticModel.Create(
            [new("F", 0.1), new("S", 0.1), new("X", 0.1)],
            [Finding.YesNo("a", 0, ("F", 0.5)), Finding.YesNo("b", 0, ("S", 0.5))],
            [new Check("a", "a", new(1)), new Check("b", "b", new(1))], [], [], 50);
        var belief = Inferrer.Infer(model, Answers(("a", true), ("b", true)), new(LargestSet: 1));
        Assert.Equal(1, belief.Marginal("F"), Close);
        Assert.Equal(1, belief.Marginal("S"), Close);
    }

    [Theory]
    [InlineData("nosuch", "yes")]
    [InlineData("c", "maybe")]
    public void Infer_UnknownNames_Throws(string check, string state) =>
        Assert.Throws<KeyNotFoundException>(() => Inferrer.Infer(Three(), [new CheckAnswered(check, state)]));

    [Fact]
    public void Infer_BadHint_Throws()
    {
        Assert.Throws<ArgumentException>(() => Inferrer.Infer(Three(), [new FindingHinted("c", [1])]));
        Assert.Throws<ArgumentException>(() => Inferrer.Infer(Three(), [new FindingHinted("c", [0, 0])]));
        Assert.Throws<ArgumentException>(() => Inferrer.Infer(Three(), [new FindingHinted("c", [-1, 2])]));
        Assert.Throws<ArgumentException>(() => Inferrer.Infer(Three(), [new FindingHinted("c", [double.NaN, 2])]));
    }

    private static double[] Round(double[] values) => [.. values.Select(v => Math.Round(v, 10))];
}
