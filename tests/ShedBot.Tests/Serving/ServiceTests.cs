using System.Collections.Immutable;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using ShedBot.Coaching;
using ShedBot.Discord.Running;
using ShedBot.Rules;
using ShedBot.Serving;
using ShedBot.Serving.Copies;
using ShedBot.Serving.Health;
using ShedBot.Storage;
using ShedBot.Storage.Checking;

namespace ShedBot.Tests.Serving;

public sealed class ServiceTests : IDisposable
{
    private static readonly StoreHealth Sound = new(4096, 0, false, null);
    private readonly TempFolder temp = new();
    private readonly KeptLog log = new();
    private readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 5, 1, 10, 0, 0, TimeSpan.Zero));
    private readonly StringWriter errors = new();
    private readonly MeterTotals meters = new("no meter of this name");
    private readonly List<string> copied = [];
    private StoreHealth store = Sound;

    public void Dispose()
    {
        meters.Dispose();
        temp.Dispose();
    }

    [Fact]
    public async Task Run_AskedToStop_LeavesTheChatAsOneThatComesBackAndEndsWell()
    {
        var chat = new PlayedChat();
        using var stop = new CancellationTokenSource();
        var running = RunAsync(chat, stop.Token);
        await stop.CancelAsync();
        Assert.Equal(ExitCodes.Fine, await running);
        Assert.True(chat.ComingBack);
    }

    [Fact]
    public async Task Run_ChatRefusesUs_EndsWithItsCodeAndTheAdvicePlainly()
    {
        var chat = new PlayedChat();
        chat.Fail(new ChatRefusedException("Make a new token."));
        Assert.Equal(ExitCodes.ChatRefused, await RunAsync(chat));
        Assert.Equal("Make a new token.", errors.ToString().Trim());
        Assert.Contains(log.Lines, l => l.Level == LogLevel.Critical && l.Line.Contains("Make a new token.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_StoreStops_LeavesTheChatAndEndsWithItsCode()
    {
        var chat = new PlayedChat();
        var running = RunAsync(chat);
        store = Sound with { Stopped = "the disk is full" };
        await PassAsync(running);
        Assert.Equal(ExitCodes.StoreStopped, await running);
        Assert.True(chat.ComingBack);
        Assert.Contains(log.Lines, l => l.Level == LogLevel.Critical && l.Line.Contains("the disk is full", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_ChatBreaksOrEndsByItself_EndsWithACodeThatIsStartedAgain()
    {
        var broken = new PlayedChat();
        broken.Fail(new InvalidOperationException("a mistake of ours"));
        Assert.Equal(ExitCodes.Broke, await RunAsync(broken));
        var ended = new PlayedChat();
        ended.End();
        Assert.Equal(ExitCodes.Broke, await RunAsync(ended));
        Assert.Equal(2, log.Lines.Count(l => l.Level == LogLevel.Critical));
    }

    [Fact]
    public async Task Run_ChatDoesNotStop_IsLeftBehindAfterEightSeconds()
    {
        using var stop = new CancellationTokenSource();
        var running = RunAsync(new PlayedChat { Stuck = true }, stop.Token);
        await stop.CancelAsync();
        var began = clock.GetUtcNow();
        await PassAsync(running);
        Assert.Equal(ExitCodes.Fine, await running);
        Assert.True(clock.GetUtcNow() - began >= Service.StopWithin);
        Assert.Contains(log.Lines, l => l.Line.Contains("within 8 s", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_WhileItRuns_ReportsEachTenSeconds()
    {
        var chat = new PlayedChat { Now = new ChatHealth(true, clock.GetUtcNow(), 3, true) };
        using var stop = new CancellationTokenSource();
        var running = RunAsync(chat, stop.Token);
        var first = new HealthFile(temp.File("health.json")).Read()!;
        Assert.Equal((true, 3, true, 4096L), (first.Ready, first.Busy, first.TokenRefused, first.Store.DataBytes));
        Assert.True(first.MemoryBytes > 0);
        while (new HealthFile(temp.File("health.json")).Read()!.When == first.When)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await Task.Delay(1);
        }

        Assert.Equal(Watch.ReportEvery, new HealthFile(temp.File("health.json")).Read()!.When - first.When);
        await stop.CancelAsync();
        await running;
    }

    [Fact]
    public async Task BackUp_OnceADay_MakesOneAndRemovesWhatIsTooOld()
    {
        var folder = Directory.CreateDirectory(temp.File("backups")).FullName;
        var watch = Watching(new PlayedChat(), new DailyBackup(folder, keepDays: 2));
        for (var hour = 0; hour <= 96; hour++)
        {
            await watch.BackUpAsync(default);
            clock.Advance(TimeSpan.FromHours(1));
        }

        Assert.Equal(5, copied.Count);
        Assert.Equal(copied[2..], Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal));
        Assert.Equal(new DateTimeOffset(2026, 5, 5, 10, 0, 0, TimeSpan.Zero), watch.Report().LastBackup);
    }

    [Fact]
    public async Task KeepRounds_OneThatFails_IsLoggedAndTheNextComes()
    {
        using var stop = new CancellationTokenSource();
        var rounds = 0;
        var keeping = Rounds.KeepAsync("trying", TimeSpan.FromSeconds(1), _ => ++rounds == 1 ? throw new IOException("the disk is full") : Task.CompletedTask, clock, log, stop.Token);
        while (rounds < 2)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await Task.Delay(1);
        }

        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => keeping);
        Assert.Contains("the disk is full", Assert.Single(log.Lines).Line, StringComparison.Ordinal);
    }

    /// <summary>Lets the clock run until the service has ended.</summary>
    private async Task PassAsync(Task running)
    {
        for (var seconds = 0; !running.IsCompleted && seconds < 1000; seconds++)
        {
            clock.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(running, Task.Delay(5));
        }
    }

    private Task<int> RunAsync(IChat chat, CancellationToken stop = default) => new Service(chat, Watching(chat, null), errors, clock, log).RunAsync(stop);

    private Watch Watching(IChat chat, DailyBackup? backups)
    {
        var rules = RulesInUse.Open(temp.BellRules(), new CoachOptions(), TextWriter.Null)!;
        return new Watch(new RulesWatch(rules, log), chat.Health, () => store, backups, CopyAsync, new HealthFile(temp.File("health.json")), meters, clock, log);
    }

    private Task<IntegrityReport> CopyAsync(string path, CancellationToken ct)
    {
        File.WriteAllText(path, "");
        copied.Add(path);
        return Task.FromResult(new IntegrityReport(ImmutableSortedDictionary<string, int>.Empty, [], 2, 0, 0));
    }
}
