using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Coaching;
using ShedBot.Rules;
using ShedBot.Serving;

namespace ShedBot.Tests.Serving;

public sealed class RulesWatchTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Look_BrokenThenMended_KeepsTheLastGoodAndTellsOfIt()
    {
        var folder = temp.BellRules();
        var rules = RulesInUse.Open(folder, new CoachOptions(), TextWriter.Null)!;
        var watch = new RulesWatch(rules, NullLogger.Instance);
        var before = watch.Version;
        watch.Look();
        Assert.False(watch.Broken);

        Change(folder, "tells: dome-touch", "tells: dome-tuch");
        watch.Look();
        Assert.Equal((true, before), (watch.Broken, watch.Version));
        watch.Look();
        Assert.True(watch.Broken);

        Change(folder, "tells: dome-tuch", "tells: dome-touch");
        Change(folder, "the bell stays silent", "the bell is silent");
        watch.Look();
        Assert.False(watch.Broken);
        Assert.NotEqual(before, watch.Version);
    }

    [Fact]
    public void Look_BrokenAndPutBackAsItWas_IsNotBrokenAnyMore()
    {
        var folder = temp.BellRules();
        var watch = new RulesWatch(RulesInUse.Open(folder, new CoachOptions(), TextWriter.Null)!, NullLogger.Instance);
        Change(folder, "tells: dome-touch", "tells: dome-tuch");
        watch.Look();
        Change(folder, "tells: dome-tuch", "tells: dome-touch");
        watch.Look();
        Assert.False(watch.Broken);
    }

    private static void Change(string folder, string piece, string instead)
    {
        var file = Path.Combine(folder, "bell.yaml");
        File.WriteAllText(file, File.ReadAllText(file).Replace(piece, instead, StringComparison.Ordinal));
        // A file system may keep times too coarse to tell two writes of one test apart.
        File.SetLastWriteTimeUtc(file, File.GetLastWriteTimeUtc(file).AddSeconds(2));
    }
}
