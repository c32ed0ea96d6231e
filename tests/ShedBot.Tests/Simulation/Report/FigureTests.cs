using ShedBot.Coaching.Simulating;

namespace ShedBot.Tests.Simulation.Report;

public class FigureTests
{
    // Newcombe 1998, Statistics in Medicine 17, 857-872, table I, method 3 (score interval without continuity correction); from memory.
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void Share_PublishedExamples_HasTheirInterval(int count, int of, double low, double high)
    {
        var share = Figure.Share(count, of);
        Assert.Equal((double)count / of, share.Value, 12);
        Assert.Equal(low, share.Low, 4);
        Assert.Equal(high, share.High, 4);
    }

    [Fact]
    public void Share_OfNothing_IsNotANumber() => Assert.True(double.IsNaN(Figure.Share(0, 0).Value));

    // The standard error of a mean is s / sqrt(n) (any textbook): of 0..99, s = 28.87, so 1.96 * 2.887 = 5.66 either way.
    [Fact]
    public void Mean_Bootstrap_IsAboutTheNormalInterval()
    {
        var mean = Figure.Mean([.. Enumerable.Range(0, 100).Select(i => (double)i)], 1);
        Assert.Equal(49.5, mean.Value, 12);
        Assert.InRange(mean.Low, 49.5 - 6.4, 49.5 - 4.9);
        Assert.InRange(mean.High, 49.5 + 4.9, 49.5 + 6.4);
    }

    [Fact]
    public void Ratio_Pairs_IsOfMeansAndNarrowWhereTheyGoTogether()
    {
        double[] below = [.. Enumerable.Range(1, 50).Select(i => (double)i)];
        var ratio = Figure.Ratio([.. below.Select(b => 0.8 * b)], below, 1);
        Assert.Equal(0.8, ratio.Value, 12);
        Assert.Equal(0.8, ratio.Low, 9);
        Assert.Equal(0.8, ratio.High, 9);
    }

    [Theory]
    [InlineData(0.5, 3)]
    [InlineData(0.9, 5)]
    [InlineData(0.2, 1)]
    public void Quantile_OfOneToFive_IsTheNearestRank(double share, double expected) =>
        Assert.Equal(expected, Figure.Quantile([4, 1, 5, 2, 3], share));
}
