using ShedBot.Serving.Health;

namespace ShedBot.Tests.Serving.Health;

public sealed class VerdictTests
{
    internal static readonly DateTimeOffset Noon = new(2026, 5, 1, 10, 0, 0, TimeSpan.Zero);

    internal static readonly HealthReport Well = new(
        Noon, Noon.AddDays(-1), true, Noon.AddMinutes(-3), 2, false, new StoreReport(4096, 0, false, false), "r1", false, 90L << 20, 20L << 20, null, [], []);

    [Fact]
    public void Of_AWellService_SaysSo()
    {
        var verdict = Verdict.Of(Well, "h", Noon.AddSeconds(12));
        Assert.True(verdict.Well);
        Assert.Equal("Well: 2 at work, rules r1, 90 MiB.", verdict.Line);
    }

    [Theory]
    [InlineData(60, true)]
    [InlineData(61, false)]
    [InlineData(-61, false)]
    public void Of_AnOldReport_IsIll(int seconds, bool well) => Assert.Equal(well, Verdict.Of(Well, "h", Noon.AddSeconds(seconds)).Well);

    [Fact]
    public void Of_NoReport_IsIll() => Assert.Contains("no report in h", AssertIll(null), StringComparison.Ordinal);

    [Fact]
    public void Of_ARefusedToken_IsIll() => Assert.Contains("token", AssertIll(Well with { TokenRefused = true }), StringComparison.Ordinal);

    [Fact]
    public void Of_AStoppedStore_IsIll() => AssertIll(Well with { Store = Well.Store with { Stopped = true } });

    [Fact]
    public void Of_ALogThatGrows_IsIll() => AssertIll(Well with { Store = Well.Store with { LogTooLong = true } });

    [Fact]
    public void Of_BrokenRules_IsWellAndSaysSo() =>
        Assert.Contains("the last good ones serve", Verdict.Of(Well with { RulesBroken = true }, "h", Noon).Line, StringComparison.Ordinal);

    [Theory]
    [InlineData(5, true)]
    [InlineData(6, false)]
    public void Of_NotYetLetIn_IsIllOnlyAfterAWhile(int minutes, bool well)
    {
        var verdict = Verdict.Of(Well with { Ready = false, Started = Noon.AddMinutes(-minutes) }, "h", Noon);
        Assert.Equal(well, verdict.Well);
        if (well) Assert.StartsWith("Starting", verdict.Line, StringComparison.Ordinal);
    }

    private static string AssertIll(HealthReport? report)
    {
        var verdict = Verdict.Of(report, "h", Noon);
        Assert.False(verdict.Well);
        Assert.DoesNotContain('\n', verdict.Line);
        return verdict.Line;
    }
}
