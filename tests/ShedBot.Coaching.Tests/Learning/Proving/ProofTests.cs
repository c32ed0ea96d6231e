using MathNet.Numerics.Statistics;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Learning.Proving;

namespace ShedBot.Coaching.Tests.Learning.Proving;

/// <summary>How sure a gain is, against figures worked by hand and against what the theorem behind it says.</summary>
public class ProofTests
{
    /// <summary>By hand: mean 1, squares about it 4 + 0 + 1 + 1 + 4 = 10; the error of the sum is sqrt(5 / 4 * 10) = 3.5355, and 5 / 3.5355 = 1.4142, which is the t of one sample.</summary>
    [Fact]
    public void Error_FiveMembers_IsThatOfTheSumOfADrawnSample()
    {
        var proof = new Proof([3, 1, 2, 0, -1], [5]);

        Assert.Equal(5, proof.Sum, 12);
        Assert.Equal(3.5355, proof.Error, 4);
        Assert.True(proof.IsAbove(1.414));
        Assert.False(proof.IsAbove(1.415));
        Assert.Equal((3, 1), (proof.Better, proof.Worse));
    }

    /// <summary>Against a general library: the error of a sum of n drawn values is their standard deviation times the root of n.</summary>
    [Fact]
    public void Error_ManyMembers_IsThatOfTheLibrary()
    {
        double[] gains = [.. Enumerable.Range(0, 26).Select(i => Math.Sin(i * i) + (i % 7 / 3.0))];

        Assert.Equal(gains.StandardDeviation() * Math.Sqrt(26), new Proof(gains, [1]).Error, 9);
    }

    /// <summary>However much one member gains, and however many others there are, it is one standard error and no more.</summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(1000, 26)]
    [InlineData(0.001, 500)]
    public void IsAbove_OneMemberAlone_NeverPassesOne(double gain, int members)
    {
        var proof = new Proof([gain, .. new double[members - 1]], [gain]);

        Assert.Equal(gain, proof.Error, gain * 1e-9);
        Assert.False(proof.IsAbove(1));
        Assert.True(proof.IsAbove(0.99));
    }

    /// <summary>So many of 26 who agree are needed for 2.5 standard errors: t = sqrt(k * 25 / (26 - k)), by hand 2.44 for five and 2.74 for six.</summary>
    [Theory]
    [InlineData(5, false)]
    [InlineData(6, true)]
    public void IsAbove_FewWhoAgree_AreNotEnough(int agree, bool passes) =>
        Assert.Equal(passes, new Proof([.. Enumerable.Repeat(0.7, agree), .. new double[26 - agree]], [0.7 * agree]).IsAbove(2.5));

    [Fact]
    public void IsAbove_OnlyOneMemberInTheClub_NeverPasses() => Assert.False(new Proof([9], [9]).IsAbove(0.1));

    [Fact]
    public void IsAbove_NothingGained_NeverPasses() => Assert.False(new Proof([0, 0, 0], [0, 0, 0]).IsAbove(0));

    /// <summary>Likelihood ratios of 2, 1/2 and 8 are 3.5 on the mean.</summary>
    [Fact]
    public void LogTimesLikelier_ThreeParts_IsTheMeanOfTheirRatios() =>
        Assert.Equal(Math.Log(3.5), new Proof([1], [Math.Log(2), Math.Log(0.5), Math.Log(8)]).LogTimesLikelier, 12);

    [Fact]
    public void LogTimesLikelier_VeryLargeRatios_DoNotOverflow() => Assert.Equal(2000 - Math.Log(2), new Proof([1], [2000, -2000]).LogTimesLikelier, 9);

    /// <summary>
    /// The theorem it rests on: where the rules are right the ratio is 1 on the mean, whatever is learnt from the other part, and so comes to k or more at most
    /// once in k. Every way in which eight cases can fall is gone through, for a cause that is behind three in ten of them by the rules; what is learnt is the
    /// Beta mean of the other four.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(0.2)]
    [InlineData(30)]
    public void LogTimesLikelier_RulesThatAreRight_AreOneOnTheMean(double sampleSize)
    {
        const double Chance = 0.3;
        var (mean, large) = (0.0, new double[] { 0, 0, 0 });
        for (var fall = 0; fall < 256; fall++)
        {
            var cases = Enumerable.Range(0, 8).Select(i => (fall >> i) & 1).ToArray();
            var likely = cases.Aggregate(1.0, (p, c) => p * (c == 1 ? Chance : 1 - Chance));
            var ratio = Math.Exp(new Proof([0], [Gain(cases[4..], cases[..4]), Gain(cases[..4], cases[4..])]).LogTimesLikelier);
            mean += likely * ratio;
            foreach (var (k, at) in new[] { (2, 0), (5, 1), (20, 2) }) large[at] += ratio >= k ? likely : 0;
        }

        Assert.Equal(1, mean, 9);
        Assert.InRange(large[0], 0, 1 / 2.0);
        Assert.InRange(large[1], 0, 1 / 5.0);
        Assert.InRange(large[2], 0, 1 / 20.0);

        double Gain(int[] from, int[] on)
        {
            var learnt = Posterior.Mean([1 - Chance, Chance], sampleSize, [from.Count(c => c == 0), from.Count(c => c == 1)]);
            return on.Sum(c => Math.Log(learnt[c] / (c == 1 ? Chance : 1 - Chance)));
        }
    }
}
