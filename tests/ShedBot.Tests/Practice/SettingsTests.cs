using ShedBot.Practice;
using ShedBot.Reasoning.Modelling;
using ShedBot.Starting;

namespace ShedBot.Tests.Practice;

public sealed class SettingsTests
{
    [Fact]
    public void Validate_Defaults_AreGood()
    {
        Assert.True(new PracticeSettingsValidator().Validate(null, new()).Succeeded);
        Assert.True(new CoachSettingsValidator().Validate(null, new()).Succeeded);
    }

    [Theory]
    [InlineData(39, false)]
    [InlineData(40, true)]
    [InlineData(400, true)]
    [InlineData(401, false)]
    public void Validate_Width_SaysTheLimitAndWhatWasGiven(int width, bool good)
    {
        var result = new PracticeSettingsValidator().Validate(null, new() { Width = width });
        Assert.Equal(good, result.Succeeded);
        if (!good) Assert.Contains($"between 40 and 400 columns; {width} was given", result.FailureMessage, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)]
    [InlineData(40, true)]
    [InlineData(41, false)]
    public void Validate_MostQuestions_SaysTheLimitAndWhatWasGiven(int most, bool good)
    {
        var result = new CoachSettingsValidator().Validate(null, new() { MostQuestions = most });
        Assert.Equal(good, result.Succeeded);
        if (!good) Assert.Contains($"between 4 and 40; {most} was given", result.FailureMessage, StringComparison.Ordinal);
    }

    /// <summary>Steps above medium hazard are never coached, whatever the settings say.</summary>
    [Theory]
    [InlineData(Hazard.None, true)]
    [InlineData(Hazard.Medium, true)]
    [InlineData(Hazard.High, false)]
    public void Validate_HazardLimit_StopsAtMedium(Hazard limit, bool good) =>
        Assert.Equal(good, new CoachSettingsValidator().Validate(null, new() { HazardLimit = limit }).Succeeded);

    [Theory]
    [InlineData("Mira", true)]
    [InlineData("zoë-2", true)]
    [InlineData("", false)]
    [InlineData("a b", false)]
    [InlineData("a/b", false)]
    public void Validate_Name_TakesLettersDigitsAndDashes(string name, bool good) =>
        Assert.Equal(good, new PracticeSettingsValidator().Validate(null, new() { As = name }).Succeeded);

    [Theory]
    [InlineData("2026-05-01T10:00:00Z", true)]
    [InlineData("noon", false)]
    public void Validate_Now_MustBeATime(string now, bool good) =>
        Assert.Equal(good, new PracticeSettingsValidator().Validate(null, new() { Now = now }).Succeeded);
}
