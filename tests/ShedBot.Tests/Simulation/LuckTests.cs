using ShedBot.Coaching.Simulating.Riders;

namespace ShedBot.Tests.Simulation;

public class LuckTests
{
    private const int Rolls = 20_000;

    [Fact]
    public void Roll_SameHappening_ComesOutTheSame() =>
        Assert.Equal(new Luck(1, 2).Roll("wheel", 3), new Luck(1, 2).Roll("wheel", 3));

    [Theory]
    [InlineData(2, 2, 0, "wheel", 3)]
    [InlineData(1, 3, 0, "wheel", 3)]
    [InlineData(1, 2, 1, "wheel", 3)]
    [InlineData(1, 2, 0, "wheels", 3)]
    [InlineData(1, 2, 0, "wheel", 4)]
    public void Roll_OnePartDiffers_ComesOutOtherwise(int seed, int rider, int draw, string happening, int time) =>
        Assert.NotEqual(new Luck(1, 2).Roll("wheel", 3), new Luck(seed, rider, draw).Roll(happening, time));

    // The mean and variance of the uniform distribution are 1/2 and 1/12 (any textbook); five standard errors either way.
    [Fact]
    public void Roll_OverManyRiders_IsUniform()
    {
        double[] rolls = [.. Enumerable.Range(0, Rolls).Select(i => new Luck(5, i).Roll("a"))];
        Assert.All(rolls, r => Assert.InRange(r, 0, 1));
        Assert.InRange(rolls.Average(), 0.5 - (5 * Math.Sqrt(1 / 12.0 / Rolls)), 0.5 + (5 * Math.Sqrt(1 / 12.0 / Rolls)));
        Assert.InRange(rolls.Average(r => (r - 0.5) * (r - 0.5)), 0.079, 0.0876);
        // Each of 20 boxes holds a twentieth.
        Assert.All(rolls.GroupBy(r => (int)(r * 20)), box => Assert.InRange(box.Count(), 820, 1180));
    }

    [Fact]
    public void Roll_NeighbouringRiders_AreUnrelated()
    {
        double[] rolls = [.. Enumerable.Range(0, Rolls + 1).Select(i => new Luck(5, i).Roll("a") - 0.5)];
        var correlation = Enumerable.Range(0, Rolls).Average(i => rolls[i] * rolls[i + 1]) * 12;
        Assert.InRange(correlation, -0.036, 0.036);
    }

    [Fact]
    public void Pick_Weights_AreFollowedAndZeroIsNeverPicked()
    {
        var counts = new int[3];
        for (var i = 0; i < Rolls; i++) counts[new Luck(5, i).Pick([3, 0, 1], "b")]++;
        Assert.Equal(0, counts[1]);
        Assert.InRange(counts[0] / (double)Rolls, 0.735, 0.765);
    }
}
