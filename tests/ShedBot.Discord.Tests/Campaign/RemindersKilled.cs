using ShedBot.Discord.Torture;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>ShedBot as a process of its own, killed while it reminds and while members answer. The long campaign has a command of its own.</summary>
public sealed class RemindersKilled(ITestOutputHelper output)
{
    /// <summary>A few kills by default; SHEDBOT_KILLS sets how many.</summary>
    [Fact]
    public async Task Remind_KilledAtRandom_LosesAndDoublesNothing()
    {
        var kills = int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_KILLS"), out var asked) ? asked : 4;
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(5 + kills));
        var folder = Directory.CreateTempSubdirectory("shedbot-kills-").FullName;
        try
        {
            var result = await KillCampaign.RunAsync(folder, kills, new Random(20260503), limit.Token);
            output.WriteLine($"{result.Kills} kills, {result.Days} evenings, {result.Reminders} reminders, {result.Presses} presses");

            Assert.Empty(result.Problems);
            Assert.True(result.Reminders >= Math.Min(kills, 3), "hardly anybody was reminded");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
