namespace ShedBot.Tests.Practice;

/// <summary>The logbook at the practice terminal, beside the conversation with the coach, under the shipped rules.</summary>
public sealed class LogbookTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Run_ARideWhileAQuestionIsOpen_LeavesTheQuestionToBeAnswered()
    {
        var text = await SitAsync("clutch drags", "rode 12 km", "1", "bye");
        Assert.Contains("Noted: 12 km on 1 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("(1 question so far)", After(text, "> 1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_SatDownAgain_KnowsTheRides()
    {
        await SitAsync("rode 12 km wet", "done spokes", "bye");
        var text = await SitAsync("bike", "as Mira", "bike", "bye");
        Assert.Contains("1 day logged, the last on 1 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("1 May 2026: the spokes", text, StringComparison.Ordinal);
        Assert.Contains("Nothing is known of it yet", After(text, "> as Mira"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Skip_MovesTheClockForAllThatFollows()
    {
        var text = await SitAsync("rode 5 km", "skip 7 days", "rode 6 km", "skip to yesterday", "bye");
        Assert.Contains("It is Friday, 8 May 2026 now.", text, StringComparison.Ordinal);
        Assert.Contains("Noted: 6 km on 8 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("The clock goes forward only", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_TheSameLineTwice_IsTwoRides() =>
        Assert.Contains("that day so far: 24 km", await SitAsync("rode 12 km", "rode 12 km", "bye"), StringComparison.Ordinal);

    [Fact]
    public async Task Run_Export_WritesFilesBesideTheData()
    {
        var text = await SitAsync("rode 12 km", "export", "bye");
        var folder = Path.Combine(temp.Path, "copy-rider");
        Assert.Contains($"Written to {folder}", text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(["bike.json", "facts.csv", "rides.csv", "work.csv"], Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
        Assert.Equal("day,kilometres,hours,weather\r\n2026-05-01,12,,dry\r\n", await File.ReadAllTextAsync(Path.Combine(folder, "rides.csv")));
    }

    [Fact]
    public async Task Run_Timeline_TellsItInWordsAndWritesAPictureBesideTheData()
    {
        var text = (await SitAsync("kit fitted 20 april", "rode 12 km", "timeline", "timeline light", "bye")).ReplaceLineEndings(" ");
        Assert.Contains("Today is 1 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("The chain while it settles: due today", text, StringComparison.Ordinal);
        var folder = Path.Combine(temp.Path, "copy-rider");
        foreach (var name in new[] { "timeline-dark.png", "timeline-light.png" })
        {
            Assert.Contains(name, text, StringComparison.Ordinal);
            Assert.Equal([0x89, 0x50, 0x4E, 0x47], (await File.ReadAllBytesAsync(Path.Combine(folder, name)))[..4]);
        }
    }

    [Fact]
    public async Task Run_TimelineWhereNothingCanBePainted_TellsItInWordsAlone()
    {
        var text = await Sitting.AtAsync(temp.File("bare.shed"), Repository.Knowledge, ["kit fitted 20 april", "rode 12 km", "timeline", "bye"], paint: (_, _) => null);
        Assert.Contains("Today is 1 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("cannot be painted on this machine", text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(temp.Path, "copy-rider")));
    }

    [Fact]
    public async Task Run_TimelineOfABikeOfWhichNothingIsKnown_SaysWhatToTell()
    {
        var text = await SitAsync("timeline", "bye");
        Assert.Contains("Nothing can be dated yet.", text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(temp.Path, "copy-rider")));
    }

    private static string After(string text, string line) => text[(text.IndexOf(line, StringComparison.Ordinal) + line.Length)..];

    private Task<string> SitAsync(params string[] lines) => Sitting.AtAsync(temp.File("log.shed"), Repository.Knowledge, lines);
}
