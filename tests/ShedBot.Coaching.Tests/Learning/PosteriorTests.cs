using MathNet.Numerics.Distributions;
using ShedBot.Coaching.Learning.Counting;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>The conjugate prior against worked examples of Gelman and others, Bayesian Data Analysis, 3rd edition (figures from memory).</summary>
public class PosteriorTests
{
    /// <summary>Section 2.4, placenta previa: 437 girls in 980 births with a flat Beta(1, 1) prior: posterior mean 0.446.</summary>
    [Fact]
    public void Mean_BetaOfBirths_IsThatOfTheBook() =>
        Assert.Equal(0.446, Posterior.Mean([0.5, 0.5], 2, [980 - 437, 437])[1], 3);

    /// <summary>Section 3.4, a poll before an election: 727, 583 and 137 of 1,447, flat Dirichlet(1, 1, 1): 728, 584 and 138 of 1,450.</summary>
    [Fact]
    public void Mean_DirichletOfPoll_IsThatOfTheBook()
    {
        var means = Posterior.Mean([1 / 3.0, 1 / 3.0, 1 / 3.0], 3, [727, 583, 137]);

        Assert.Equal([728 / 1450.0, 584 / 1450.0, 138 / 1450.0], means, (a, b) => Math.Abs(a - b) < 1e-12);
    }

    /// <summary>Laplace's rule of succession, (s + 1) / (n + 2): after 9 of 9, 10/11.</summary>
    [Fact]
    public void Mean_RuleOfSuccession_IsLaplaces() => Assert.Equal(10 / 11.0, Posterior.Mean([0.5, 0.5], 2, [0, 9])[1], 12);

    /// <summary>Against a general library's distributions: the mean of Beta(a p + n, a (1 - p) + N - n), and of the Dirichlet likewise.</summary>
    [Theory]
    [InlineData(30, 0.875, 12, 5)]
    [InlineData(3, 0.125, 0.4, 40.25)]
    [InlineData(90, 0.5, 700, 1)]
    public void Mean_BetaAndDirichlet_AreThoseOfTheLibrary(double sampleSize, double chance, double so, double notSo)
    {
        Assert.Equal(new Beta((sampleSize * chance) + so, (sampleSize * (1 - chance)) + notSo).Mean, Posterior.Mean([1 - chance, chance], sampleSize, [notSo, so])[1], 12);

        double[] prior = [chance / 2, 1 - chance, chance / 2], counts = [so, notSo, 7];
        var library = new Dirichlet([.. prior.Zip(counts, (p, n) => (sampleSize * p) + n)]).Mean;
        Assert.Equal(library, Posterior.Mean(prior, sampleSize, counts), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void Mean_NoCounts_IsThePrior() => Assert.Equal([0.2, 0.3, 0.5], Posterior.Mean([0.2, 0.3, 0.5], 20, [0, 0, 0]), (a, b) => Math.Abs(a - b) < 1e-12);

    /// <summary>One member with all counts moves nothing; with two, what the lesser one leaves.</summary>
    [Fact]
    public void TallyMean_IsHeldToWhatStaysWithoutAnyOneMember()
    {
        var tally = new Tally(2);
        tally.Add(0, 1, 40);
        Assert.Equal(0.5, tally.Mean(1, [0.5, 0.5], 20), 12);

        tally.Add(1, 1, 10);
        Assert.Equal((10 + 10) / 30.0, tally.Mean(1, [0.5, 0.5], 20), 12);
        Assert.Equal((10 + 0) / 30.0, tally.Mean(0, [0.5, 0.5], 20), 12);
    }
}
