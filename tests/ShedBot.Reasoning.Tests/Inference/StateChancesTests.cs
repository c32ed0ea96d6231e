using System.Collections.Immutable;
using CsCheck;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Inference;

public class StateChancesTests
{
    private static StateChances Of(int states, ImmutableArray<double> leak, params ImmutableArray<double>[] links)
    {
        var ids = Enumerable.Range(0, Math.Max(1, links.Length)).Select(i => $"f{i}").ToList();
        var finding = new Finding("g", [.. Enumerable.Range(0, states).Select(s => $"s{s}")], leak, [.. links.Select((net, i) => new Link(ids[i], net))]);
        return new(DiagnosticModel.Create(ids.Select(id => new Fault(id, 0.1)), [finding], [], [], [], 50), 0);
    }

    [Fact]
    public void Given_TwoStates_IsTheLeakyNoisyOr() =>
        Gen.Select(Gen.Double[0, 0.99], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((leak, s, t) =>
        {
            // Pearl 1988, section 4.3.2: P(yes) = 1 - (1 - leak)(1 - s)(1 - t).
            var finding = Of(2, [0, leak], [0, s], [0, t]);
            Assert.Equal(1 - ((1 - leak) * (1 - s) * (1 - t)), finding.Given([0, 1])[1], 1e-15);
            Assert.Equal((1 - leak) * (1 - s), finding.Given([0])[0], 1e-15);
            Assert.Equal(leak, finding.Given([])[1], 1e-15);
        });

    [Fact]
    public void Given_OneCauseWithoutLeak_GivesItsNetStrengthsBack() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((sum, cut) =>
        {
            var chances = Of(3, [0, 0, 0], [0, sum * cut, sum * (1 - cut)]).Given([0]);
            Assert.Equal(1 - sum, chances[0], 1e-15);
            Assert.Equal(sum * cut, chances[1], 1e-14);
            Assert.Equal(sum * (1 - cut), chances[2], 1e-14);
        });

    [Fact]
    public void Given_TwoCausesCompete_ByTheirHazards()
    {
        // By hand: hazards ln 2 and ln 4 (strengths .5 and .75), so state 1 gets a third of 1 - 1/8, state 2 two thirds.
        var chances = Of(3, [0, 0, 0], [0, 0.5, 0], [0, 0, 0.75]).Given([0, 1]);
        Assert.Equal(0.125, chances[0], 1e-15);
        Assert.Equal(0.875 / 3, chances[1], 1e-15);
        Assert.Equal(0.875 * 2 / 3, chances[2], 1e-15);
    }

    [Fact]
    public void Given_SureCause_TakesAllAndSharesWithItsLike()
    {
        var finding = Of(3, [0, 0.1, 0.2], [0, 0.75, 0.25], [0, 0, 0.9], [0, 0, 1]);
        Assert.Equal(0, finding.Given([0, 1])[0]);
        Assert.Equal(0.75, finding.Given([0, 1])[1], 1e-15);
        Assert.Equal(0.375, finding.Given([0, 2])[1], 1e-15);
        Assert.Equal(0.625, finding.Given([0, 2])[2], 1e-15);
    }

    [Fact]
    public void Given_NothingCanShowIt_StaysNormal() => Assert.Equal([1, 0, 0], Of(3, [0, 0, 0]).Given([0]));

    [Fact]
    public void AnswerChance_AnyError_RowsAddUpToOneAndMatchTheYesNoForm()
    {
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0, 0.5], Gen.Int[2, 5]).Sample((fp, fn, states) =>
        {
            for (var truth = 0; truth < states; truth++)
                Assert.Equal(1, Enumerable.Range(0, states).Sum(said => AnswerChance.Of(new(fp, fn), states, truth, said)), 1e-12);
        });
        Assert.Equal([0.05, 0.9], AnswerChance.Column(new(0.05, 0.1), 2, 1));
        Assert.Equal(0.025, AnswerChance.Of(new(0.05, 0.1), 3, 0, 2));
        Assert.Equal(0.05, AnswerChance.Of(new(0.05, 0.1), 3, 1, 2));
    }
}
