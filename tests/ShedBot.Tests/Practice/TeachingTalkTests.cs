namespace ShedBot.Tests.Practice;

/// <summary>The practice club's rules at the terminal, as they are typed: a sheet by numbers and by words, back, skip, all and stop, files, and what is no tip.</summary>
public sealed class TeachingTalkTests
{
    [Fact]
    public async Task Sheet_ByNumbersAndWords_IsReadAloudAndHandedIn()
    {
        var said = await SitAsync(
            "rules new fact",
            "1", "which clutch lever is fitted", "Is it the lever of the kit, or another one?", "1000 days",
            "The lever of the kit", "very likely", "Another one, with a longer pull", "very unlikely", "skip",
            "back", "all", "go on", "skip",
            "slack-too-big", "2", "0.2", "skip", "skip", "Ben of the Thursday rides",
            "rules hand in", "rules log");
        Assert.Contains("A fact of the bike: which clutch lever is fitted", said);
        Assert.Contains("A fact of the bike: all so far", said);
        Assert.Contains("it has 0.2 times the odds", said);
        Assert.Contains("handed in: A fact of the bike: which clutch lever is fitted", said);
        Assert.DoesNotContain("Does not fit yet", said);
    }

    [Fact]
    public async Task Sheet_LeftWithStop_GoesOnWhereItWas()
    {
        var said = await SitAsync(
            "rules new cover", "the leg guard (two wing nuts)", "Engine off and cold, plug cap off.", "Undo the two wing nuts.", "stop",
            "my clutch drags", "rules waiting", "rules go on P1", "done", "skip", "2 minutes", "all");
        Assert.Contains("2 lines kept. The next one, or done.", said);
        Assert.Contains("Kept as far as it is. To go on: rules waiting.", said);
        Assert.Contains("So the clutch drags.", said);
        var all = said[said.IndexOf("Something to open first: all so far", StringComparison.Ordinal)..];
        Assert.Contains("Engine off and cold, plug cap off. / Undo the two wing nuts.", all);
        Assert.Contains("(skipped)", all);
        Assert.Contains("2 minutes", all);
    }

    [Fact]
    public async Task Answer_ThatFitsSeveral_IsAskedAgainAndNothingIsLost()
    {
        var said = await SitAsync("rules mend fact", "build", "slack", "days", "often", "90", "all");
        Assert.Contains("how new the build is", said, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("I find nothing for \"slack\"", said);
        Assert.Contains("I need a number, such as 5.", said);
    }

    [Fact]
    public async Task File_ThatCannotBeRead_IsToldAndTheTalkGoesOn()
    {
        var said = await SitAsync("rules file in no-such-file.yaml", "rules file out no/such/folder/rules.yaml", "rules file in .", "my clutch drags");
        Assert.Contains("I cannot read that file:", said);
        Assert.Contains("I cannot write that file:", said);
        Assert.Contains("So the clutch drags.", said);
    }

    [Fact]
    public async Task File_OutAndInAgain_SaysTheSame()
    {
        using var folder = new TempFolder();
        var file = folder.File("mine.yaml");
        var said = await SitAsync(folder, $"rules file out {file}", $"rules file in {file}");
        Assert.Contains($"Written to {file}.", said);
        Assert.Contains("The file says the same as the rules do now.", said);
    }

    [Fact]
    public async Task Publish_WhatWasNotLookedAt_IsNotPublished()
    {
        var said = await SitAsync("rules publish", "rules publish P7", "rules strength", "stop", "rules publish P1", "rules editions");
        Assert.Contains("Which one? Look at it first: rules waiting.", said);
        Assert.DoesNotContain("Published as edition", said);
    }

    [Theory]
    [InlineData("tip of the lever broke off")]
    [InlineData("tip of lever snapped, clutch drags")]
    public async Task Tip_WithoutAColon_IsATroubleOfTheRider(string trouble)
    {
        var said = await SitAsync(trouble, "rules tips");
        Assert.DoesNotContain("It is passed on", said);
    }

    [Fact]
    public async Task Tip_WithAColon_IsPassedOnAndDeclinedKindly()
    {
        var said = await SitAsync("tip: a tight tie pinches the cable", "tips", "tip T1", "rules decline T1 we have that already");
        Assert.Contains("It is passed on", said);
        Assert.Contains("it did not become a rule: we have that already", said);
    }

    [Fact]
    public async Task Leave_WhereLeavingIsNotOffered_IsUnderstoodAsStopIs()
    {
        var stop = await SitAsync("my clutch drags", "stop");
        var leave = await SitAsync("my clutch drags", "leave");
        Assert.Equal(stop[(stop.IndexOf("> stop", StringComparison.Ordinal) + 6)..], leave[(leave.IndexOf("> leave", StringComparison.Ordinal) + 7)..]);
    }

    private static async Task<string> SitAsync(params string[] lines)
    {
        using var folder = new TempFolder();
        return await SitAsync(folder, lines);
    }

    /// <returns>All that was shown, however the lines were broken.</returns>
    private static async Task<string> SitAsync(TempFolder folder, params string[] lines) =>
        string.Join(' ', (await Sitting.AtAsync(folder.File("practice.shed"), Path.Combine(Repository.Root, "knowledge"), lines)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
