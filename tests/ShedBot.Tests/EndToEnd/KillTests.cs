using System.Globalization;
using ShedBot.Coaching.Cases;
using ShedBot.Storage;
using Xunit.Abstractions;

namespace ShedBot.Tests.EndToEnd;

/// <summary>Kills the host again and again in the middle of a conversation: what was replied to is kept, and the conversation goes on.</summary>
public sealed class KillTests(ITestOutputHelper output)
{
    /// <summary>Few in the daily run; tests/crash/run.sh asks for a hundred.</summary>
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("SHEDBOT_KILLS") ?? "3", CultureInfo.InvariantCulture);

    private static readonly MemberId Rider = new("rider");

    /// <summary>What the rider says in turn: troubles, answers, doubts, corrections.</summary>
    private static readonly string[] Lines =
        ["bell makes no sound", "1", "n", "w", "2", "1", "b", "2", "1", "it is worse now", "3", "1", "1", "bell sounds flat", "1", "2", "1", "1"];

    [Fact]
    public async Task Kill_InTheMiddleOfAConversation_LosesNothingThatWasRepliedTo()
    {
        using var temp = new TempFolder();
        string[] arguments = ["practice", "--plain", "--echo", "--data", temp.File("bell.shed"), "--knowledge", temp.BellRules(), "--now", "2026-05-01T10:00:00Z"];
        var (replied, lost, doubled, typed) = (0, 0, 0, 0);
        var random = new Random(20260501);
        for (var kill = 0; kill < Kills; kill++)
        {
            var (before, _) = await TurnsAsync(temp.File("bell.shed"));
            int sent = 0, answered = 0;
            using (var host = HostProcess.Start(arguments))
            {
                await host.ReadUntilAsync(l => l.Length > 0);
                for (var turns = random.Next(1, 5); sent < turns;)
                {
                    await host.TypeAsync(Lines[typed++ % Lines.Length]);
                    sent++;
                    await host.ReadUntilAsync(l => l.StartsWith("> ", StringComparison.Ordinal));
                    if (sent == turns && random.Next(2) == 0)
                    {
                        // Into the middle of the turn: before, while or after it is kept.
                        await Task.Delay(random.Next(0, 12));
                        break;
                    }

                    // A line of the reply is out, so the turn is acknowledged.
                    await host.ReadUntilAsync(l => l.Length > 0 && !l.StartsWith('>'));
                    answered++;
                }

                await host.KillAsync();
            }

            var (after, events) = await TurnsAsync(temp.File("bell.shed"));
            replied += answered;
            lost += Math.Max(0, before + answered - after);
            doubled += Math.Max(0, after - before - sent) + events.Length - events.Distinct().Count();
        }

        // The conversation goes on: a host that is started once more answers.
        var (code, last, errors) = await HostProcess.RunAsync("bell makes no sound\nbye\n", arguments);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"kills={Kills} acknowledged={replied} lost={lost} doubled={doubled}"));
        Assert.Equal((0, 0, 0, ""), (lost, doubled, code, errors));
        Assert.True(replied >= Kills / 4 && last.Length > 100);
    }

    /// <summary>How many turns are kept, over all cases, and the events they answered.</summary>
    private static async Task<(int Turns, string[] Events)> TurnsAsync(string data)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data }, CancellationToken.None);
        Assert.True(store.Integrity.IsSound, store.Integrity.ToString());
        var cases = await store.CasesOfAsync(Rider, 100, CancellationToken.None);
        return (cases.Sum(c => c.Turn), [.. cases.SelectMany(c => c.Handled)]);
    }
}
