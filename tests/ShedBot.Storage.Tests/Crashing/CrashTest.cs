using ShedBot.Storage.Torture;
using ShedBot.Storage.Torture.Learning;
using ShedBot.Storage.Torture.Reminders;
using ShedBot.Storage.Torture.Teaching;
using Xunit.Abstractions;

namespace ShedBot.Storage.Tests.Crashing;

/// <summary>Other processes: one that has the store, and one that is killed while it saves. The long campaign has a command of its own.</summary>
public sealed class CrashTest(ITestOutputHelper output) : IDisposable
{
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_WhileAnotherProcessHasTheStore_IsRefusedUntilThatOneEnds()
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        using var other = Campaign.Start("hold", scratch.Data);
        try
        {
            Assert.Equal("open", await other.StandardOutput.ReadLineAsync(limit.Token));
            var before = scratch.Contents();

            var refusal = await Assert.ThrowsAsync<StoreRefusedException>(OpenAsync);

            Assert.Equal(RefusalCodes.InUse, refusal.Code);
            Assert.Equal(before, scratch.Contents());
        }
        finally
        {
            other.Kill();
            await other.WaitForExitAsync(CancellationToken.None);
        }

        await (await OpenAsync()).DisposeAsync();
    }

    [Theory]
    [InlineData(true, 8)]
    [InlineData(false, 3)]
    public async Task Save_KilledAtRandom_LosesNothingAcknowledged(bool durable, int kills)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(5));
        var result = await Campaign.RunAsync(scratch.Path, kills, new Random(20260502), durable, limit.Token);
        output.WriteLine($"{result.Acknowledged} steps acknowledged over {result.Kills} kills, {result.LandedUnsaid} landed unacknowledged");

        Assert.Empty(result.Losses);
        Assert.True(result.Acknowledged >= kills);
    }

    /// <summary>A few kills by default; SHEDBOT_KILLS sets how many.</summary>
    [Fact]
    public async Task Remind_KilledAtRandom_LosesAndDoublesNothing()
    {
        var kills = int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_KILLS"), out var asked) ? asked : 6;
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(2 + kills / 10));
        var result = await ReminderCampaign.RunAsync(scratch.Path, kills, new Random(20260503), limit.Token);
        output.WriteLine($"{result.Acknowledged} reminders acknowledged over {result.Kills} kills, {result.Sent} sent, {result.Offered} offered again under the same name");

        Assert.Empty(result.Problems);
        Assert.True(result.Acknowledged >= kills);
    }

    [Fact]
    public async Task Teach_KilledAtRandom_LosesAndDoublesNothingAndLeavesNoGap()
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(5));
        var result = await TeachingCampaign.RunAsync(scratch.Path, 6, new Random(20260504), limit.Token);
        output.WriteLine($"{result.Acknowledged} acts acknowledged over {result.Kills} kills, {result.Forgotten} took somebody out, {result.LandedUnsaid} editions landed unacknowledged");

        Assert.Empty(result.Problems);
        Assert.True(result.Acknowledged >= 6);
    }

    /// <summary>A round of learning counts, tries, and keeps the edition with its line and its note, or nothing of it.</summary>
    [Fact]
    public async Task Learn_KilledAtRandom_PublishesEachEditionOnceWithItsLineAndItsNote()
    {
        var kills = int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_KILLS"), out var asked) ? asked : 6;
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(3 + (kills / 5)));
        var result = await LearningCampaign.RunAsync(scratch.Path, kills, new Random(20260505), limit.Token);
        output.WriteLine($"{result.Kills} kills, {result.Clubs} clubs, cut off {string.Join(", ", result.Cut.Select(c => $"after {c.Key} {c.Value}"))}");

        Assert.Empty(result.Problems);
        Assert.True(result.Clubs > 1, "no club came to its end");
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, CancellationToken.None);
}
