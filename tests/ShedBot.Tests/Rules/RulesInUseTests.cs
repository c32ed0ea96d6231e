using ShedBot.Coaching;
using ShedBot.Knowledge.Loading;
using ShedBot.Rules;

namespace ShedBot.Tests.Rules;

public sealed class RulesInUseTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string file;
    private readonly RulesInUse rules;

    public RulesInUseTests()
    {
        var folder = temp.BellRules();
        file = Path.Combine(folder, "bell.yaml");
        rules = RulesInUse.Open(folder, new CoachOptions(), TextWriter.Null)!;
    }

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Look_NothingChanged_IsSilent() => Assert.Null(rules.Look());

    [Fact]
    public void Look_AGoodChange_ServesTheNextTurn()
    {
        var before = rules.Coach;
        Change("the bell stays silent", "the bell is silent");
        Assert.Equal(ReloadOutcome.Taken, rules.Look()!.Outcome);
        Assert.Equal("the bell is silent", rules.Knowledge.Complaints["silent"].Called);
        Assert.NotSame(before, rules.Coach);
        Assert.Null(rules.Look());
    }

    [Fact]
    public void Look_ABrokenChange_KeepsTheLastGoodAndSaysWhere()
    {
        var before = rules.Coach;
        Change("tells: dome-touch", "tells: dome-tuch");
        var news = rules.Look()!;
        Assert.Equal(ReloadOutcome.KeptLastGood, news.Outcome);
        Assert.Contains(news.Problems, p => p.StartsWith("knowledge/bell.yaml:", StringComparison.Ordinal));
        Assert.Same(before, rules.Coach);
        Assert.Null(rules.Look());

        Change("tells: dome-tuch", "tells: dome-touch");
        Assert.Null(rules.Look());
        Assert.Same(before, rules.Coach);
    }

    [Fact]
    public void Look_TheFolderIsGone_KeepsTheLastGoodAndSaysSo()
    {
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        Assert.Equal(ReloadOutcome.KeptLastGood, rules.Look()!.Outcome);
        Assert.NotNull(rules.Coach);
    }

    private void Change(string piece, string instead)
    {
        var text = File.ReadAllText(file);
        Assert.Contains(piece, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(piece, instead, StringComparison.Ordinal));
        // A file system may keep times too coarse to tell two writes of one test apart.
        File.SetLastWriteTimeUtc(file, File.GetLastWriteTimeUtc(file).AddSeconds(2));
    }
}
