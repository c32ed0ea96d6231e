using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Tests.Shapes;

public class IntervalWordsTests
{
    [Theory]
    [InlineData("14 riding days", 14, Measure.RidingDays)]
    [InlineData("1 riding day", 1, Measure.RidingDays)]
    [InlineData("2.5 hours", 2.5, Measure.Hours)]
    [InlineData(".5 hours", 0.5, Measure.Hours)]
    [InlineData("1 hour", 1, Measure.Hours)]
    [InlineData("50 km", 50, Measure.Kilometres)]
    [InlineData("1 day", 1, Measure.Days)]
    [InlineData("2 weeks", 14, Measure.Days)]
    [InlineData("6 months", 180, Measure.Days)]
    [InlineData("1 year", 365, Measure.Days)]
    [InlineData("before the next ride", 0, Measure.RidingDays)]
    [InlineData("-3 km", -3, Measure.Kilometres)]
    public void TryRead_AnInterval_GivesAmountAndMeasure(string text, double amount, Measure measure)
    {
        Assert.True(IntervalWords.TryRead(text, out var interval));
        Assert.Equal(new Interval(amount, measure), interval);
        Assert.Matches(IntervalWords.Pattern, text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("14")]
    [InlineData("14 ")]
    [InlineData("km")]
    [InlineData("ten km")]
    [InlineData("10km")]
    [InlineData("10 KM")]
    [InlineData("10  km")]
    [InlineData("10 riding")]
    [InlineData("1e9 km")]
    [InlineData("1.2.3 km")]
    [InlineData(". km")]
    [InlineData("NaN km")]
    [InlineData("1,5 hours")]
    [InlineData("before the next rides")]
    public void TryRead_NoInterval_SaysSo(string text)
    {
        Assert.False(IntervalWords.TryRead(text, out _));
        Assert.DoesNotMatch(IntervalWords.Pattern, text);
    }

    [Theory]
    [InlineData("14 ridingdays", "Did you mean 'riding days'?")]
    [InlineData("3 kms", "Did you mean 'km'?")]
    [InlineData("soon", "For example: 14 riding days.")]
    public void Instead_NoInterval_TellsWhatToWrite(string text, string told) =>
        Assert.Contains(told, IntervalWords.Instead(text), StringComparison.Ordinal);
}
