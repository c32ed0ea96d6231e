using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Inference;

public class QuickscoreTests
{
    [Fact]
    public void Sum_OneFindingThere_GivesTheKnownMarginals()
    {
        // Computed exactly by an independent program from the formula of Heckerman 1989.
        var score = Quickscore.Sum(Three(), [0], []);
        Assert.Equal(.5, score.Marginal(0), 1e-10);
        Assert.Equal(.7959183673, score.Marginal(1), 1e-10);
        Assert.Equal(.2, score.Marginal(2), 1e-10);
        Assert.Equal(.5444444444, score.MarginalGivenTrouble(0), 1e-10);
        Assert.Equal(1 - (.9 * (.3 * .1 + .7)), score.Evidence, 1e-12);
    }

    [Fact]
    public void Sum_OnlyFindingsThatAreNotThere_FaultsStayIndependent()
    {
        // Each fault's own odds are scaled by 1 - s: .3 * .1 against .7.
        var score = Quickscore.Sum(Three(), [], [0]);
        Assert.Equal(.03 / .73, score.Marginal(1), 1e-12);
        Assert.Equal(.5, score.Marginal(0), 1e-12);
    }

    [Fact]
    public void Sum_TooManyThereOrNotYesNo_Refuses()
    {
        var model = DiagnosticModel.Create(
            [new("F", 0.5)],
            [new Finding("three", ["a", "b", "c"], [0, 0.1, 0.1], []), .. Enumerable.Range(0, 16).Select(i => Finding.YesNo($"g{i}", 0.1, ("F", 0.5)))],
            [], [], [], 50);
        Assert.Throws<ArgumentException>(() => Quickscore.Sum(model, [0], []));
        Assert.Throws<ArgumentException>(() => Quickscore.Sum(model, [.. Enumerable.Range(1, 16)], []));
        Assert.InRange(Quickscore.Sum(model, [.. Enumerable.Range(1, 15)], []).Marginal(0), 0.9999, 1);
    }
}
