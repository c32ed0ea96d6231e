using System.Diagnostics;
using System.Globalization;

namespace ShedBot.Storage.Torture;

/// <summary>What a campaign found.</summary>
/// <param name="Acknowledged">Steps that the killed processes had acknowledged.</param>
/// <param name="LandedUnsaid">Steps found beyond those acknowledged: the kill came between the save and its acknowledgement.</param>
/// <param name="WithLog">Kills that left saves in the log.</param>
public sealed record CampaignResult(int Kills, int Acknowledged, int LandedUnsaid, int WithLog, IReadOnlyList<string> Losses);

/// <summary>Starts a process that saves, kills it with a signal that it cannot catch, opens the store and compares. One store through all kills.</summary>
public static class Campaign
{
    private const int LongestLifeMs = 400;

    public static async Task<CampaignResult> RunAsync(string directory, int kills, Random chance, bool durable, CancellationToken ct)
    {
        var path = Path.Combine(directory, "shed.db");
        var acknowledged = Enumerable.Repeat(-1, Script.Members).ToArray();
        var losses = new List<string>();
        var (steps, landed, withLog, sinceCheck) = (0, 0, 0, 0);
        for (var kill = 0; kill < kills && losses.Count == 0; kill++)
        {
            var before = (int[])acknowledged.Clone();
            await LiveAndDieAsync(path, durable, chance.Next(1, LongestLifeMs), acknowledged, ct);
            steps += acknowledged.Zip(before).Sum(p => p.First - p.Second);
            withLog += new FileInfo(Path.Combine(directory, "shed-log.db")) is { Exists: true, Length: > 0 } ? 1 : 0;
            // Every second time the next child meets the store as the kill left it.
            sinceCheck++;
            if (kill % 2 == 0)
            {
                landed += await Check.RunAsync(path, acknowledged, sinceCheck, $"kill {kill + 1}", losses, ct);
                sinceCheck = 0;
            }
        }

        landed += await Check.RunAsync(path, acknowledged, sinceCheck, "end", losses, ct);
        return new CampaignResult(kills, steps, landed, withLog, losses);
    }

    /// <summary>Starts this program, which lies beside whatever calls it.</summary>
    public static Process Start(params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardInput = true, RedirectStandardError = true };
        foreach (var argument in (string[])["exec", Path.Combine(AppContext.BaseDirectory, "ShedBot.Storage.Torture.dll"), .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start) ?? throw new InvalidOperationException("dotnet could not be started.");
    }

    private static async Task LiveAndDieAsync(string path, bool durable, int lifeMs, int[] acknowledged, CancellationToken ct)
    {
        using var child = Start("save", path, durable ? "durable" : "quick");
        try
        {
            // Life is counted from the first acknowledgement, else a slow start would be all that is ever killed.
            var first = await child.StandardOutput.ReadLineAsync(ct)
                ?? throw new InvalidOperationException($"The saving process ended by itself: {await child.StandardError.ReadToEndAsync(ct)}");
            Note(first, acknowledged);
            var rest = child.StandardOutput.ReadToEndAsync(ct);
            await Task.Delay(lifeMs, ct);
            child.Kill();
            // What comes after the last line feed was cut off by the kill.
            foreach (var line in (await rest).Split('\n')[..^1])
            {
                Note(line, acknowledged);
            }
        }
        finally
        {
            child.Kill();
            await child.WaitForExitAsync(CancellationToken.None);
        }
    }

    private static void Note(string line, int[] acknowledged)
    {
        var space = line.IndexOf(' ', StringComparison.Ordinal);
        acknowledged[int.Parse(line.AsSpan(0, space), CultureInfo.InvariantCulture)] =
            int.Parse(line.AsSpan(space + 1), CultureInfo.InvariantCulture);
    }
}
