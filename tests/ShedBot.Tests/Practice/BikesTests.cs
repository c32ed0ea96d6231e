namespace ShedBot.Tests.Practice;

/// <summary>What is known of a bike, and more than one, at the practice terminal under the shipped rules.</summary>
public sealed class BikesTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task SetUp_LeftAndBegunAgain_GoesOnWithWhatIsMissing()
    {
        await SitAsync("set up", "march 2026", "bye");
        var text = await SitAsync("set up", "bye");
        Assert.DoesNotContain("When was the engine kit fitted?", text, StringComparison.Ordinal);
        Assert.Contains("When did the clutch pads go in?", text, StringComparison.Ordinal);
    }

    /// <summary>Whoever tells of fire is heard, whatever was asked.</summary>
    [Theory]
    [InlineData("the bike is on fire")]
    [InlineData("fuel is leaking on the exhaust")]
    [InlineData("clutch won't let go when I pull it in")]
    public async Task SetUp_ATroubleInBetween_IsForTheCoach(string words)
    {
        var (open, asked) = (After(await SitAsync("set up", "skip", words, "bye"), "> " + words), After(await SitAsync("as Mira", words, "bye"), "> " + words));
        Assert.Equal(asked, open);
    }

    [Fact]
    public async Task SetUp_InACase_LeavesTheQuestionOpen()
    {
        var text = await SitAsync("clutch drags", "set up", "stop", "1", "bye");
        Assert.Contains("(1 question so far)", After(text, "> 1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task SetUp_ARideInBetween_IsLogged() =>
        Assert.Contains("Noted: 12 km on 1 May 2026", await SitAsync("set up", "rode 12 km", "bye"), StringComparison.Ordinal);

    [Fact]
    public async Task SetUp_AnotherMember_IsNotAskedOn()
    {
        var text = After(await SitAsync("set up", "as Mira", "march 2026", "bike", "bye"), "> as Mira");
        Assert.Contains("Nothing is known of it yet", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SetUp_WholeSheetSkipped_EndsByItself() =>
        Assert.Contains("That was all of it", await SitAsync(["set up", .. Enumerable.Repeat("skip", 17), "bye"]), StringComparison.Ordinal);

    /// <summary>Lines are events, and each counts: those of one bike never pass for those of another.</summary>
    [Fact]
    public async Task Bikes_ChangedOftenWithinASitting_EachLineCounts()
    {
        var text = await SitAsync("rode 1 km", "bike new blue", "rode 2 km", "bike use first", "rode 3 km", "bike use blue", "bike use first", "rode 4 km", "bike remove blue", "1", "bikes", "bye");
        Assert.DoesNotContain("noted already", text, StringComparison.Ordinal);
        Assert.Contains("that day so far: 8 km", text, StringComparison.Ordinal);
        Assert.Contains("Removed: blue", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Remove_WithACaseOpen_IsRefusedAndTheCaseGoesOn()
    {
        var text = await SitAsync("rode 1 km", "bike new blue", "clutch drags", "bike remove blue", "1", "bye");
        Assert.Contains("I take it to be about blue. If it is another bike: say forget it, then bike use and its name, and tell me again.", text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("is still open", text, StringComparison.Ordinal);
        Assert.Contains("(1 question so far)", After(text, "> 1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_OfTwoBikes_HasFilesOfBoth()
    {
        await SitAsync("rode 1 km", "bike new blue", "export", "bye");
        var names = Directory.EnumerateFiles(Path.Combine(temp.Path, "copy-rider")).Select(f => Path.GetFileName(f)!).ToList();
        Assert.Equal(8, names.Count);
        Assert.Contains("blue-facts.csv", names);
    }

    private static string After(string text, string line) => text[(text.IndexOf(line, StringComparison.Ordinal) + line.Length)..];

    private Task<string> SitAsync(params IEnumerable<string> lines) => Sitting.AtAsync(temp.File("practice.shed"), Repository.Knowledge, lines);
}
