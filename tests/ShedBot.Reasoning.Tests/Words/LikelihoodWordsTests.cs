using ShedBot.Reasoning.Words;

namespace ShedBot.Reasoning.Tests.Words;

/// <summary>The bands of Intelligence Community Directive 203, Analytic Standards (2015), upper row; which band owns a shared end is our own choice.</summary>
public class LikelihoodWordsTests
{
    [Theory]
    [InlineData(0, "almost no chance")]
    [InlineData(0.01, "almost no chance")]
    [InlineData(0.0499, "almost no chance")]
    [InlineData(0.05, "very unlikely")]
    [InlineData(0.1999, "very unlikely")]
    [InlineData(0.20, "unlikely")]
    [InlineData(0.4499, "unlikely")]
    [InlineData(0.45, "roughly even chance")]
    [InlineData(0.5499, "roughly even chance")]
    [InlineData(0.55, "likely")]
    [InlineData(0.7999, "likely")]
    [InlineData(0.80, "very likely")]
    [InlineData(0.9499, "very likely")]
    [InlineData(0.95, "almost certain")]
    [InlineData(0.9999, "almost certain")]
    [InlineData(1, "almost certain")]
    public void For_BothSidesOfEachEnd_GivesTheWord(double probability, string expected) =>
        Assert.Equal(expected, LikelihoodWords.Text(LikelihoodWords.For(probability)));

    [Fact]
    public void Start_EachWord_IsTheMiddleOfItsBandAndReadsBack()
    {
        double[] middles = [0.03, 0.125, 0.325, 0.5, 0.675, 0.875, 0.97];
        foreach (var word in Enum.GetValues<LikelihoodWord>())
        {
            Assert.Equal(middles[(int)word], LikelihoodWords.Start(word), 1e-12);
            Assert.Equal(word, LikelihoodWords.For(LikelihoodWords.Start(word)));
            Assert.True(LikelihoodWords.TryRead($" {LikelihoodWords.Text(word).ToUpperInvariant()} ", out var read));
            Assert.Equal(word, read);
            Assert.InRange(LikelihoodWords.Start(word), LikelihoodWords.Range(word).From, LikelihoodWords.Range(word).To);
        }
    }

    [Fact]
    public void TryRead_OtherWords_SaysNo() => Assert.False(LikelihoodWords.TryRead("certain", out _));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void For_NoProbability_Throws(double probability) => Assert.Throws<ArgumentOutOfRangeException>(() => LikelihoodWords.For(probability));
}
