namespace ShedBot.Tests.Practice;

/// <summary>The practice club's rules at the terminal, as they are typed: a sheet by numbers and by words, back, skip, all and stop, files, and what is no tip.</summary>
public sealed class TeachingTalkTests
{
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

    private static async Task<string> SitAsync(params string[] lines)
    {
        using var folder = new TempFolder();
        return await SitAsync(folder, lines);
    }

    /// <returns>All that was shown, however the lines were broken.</returns>
    private static async Task<string> SitAsync(TempFolder folder, params string[] lines) =>
        string.Join(' ', (await Sitting.AtAsync(folder.File("practice.shed"), Path.Combine(Repository.Root, "knowledge"), lines)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
