using System.Globalization;

namespace ShedBot.Storage.Torture.Teaching;

/// <summary>What a campaign of teaching found.</summary>
/// <param name="Acknowledged">Acts that the killed processes had acknowledged.</param>
/// <param name="Forgotten">How many of these took somebody out.</param>
/// <param name="LandedUnsaid">Editions found beyond those acknowledged.</param>
/// <param name="Problems">What was lost, doubled, torn or left with a gap.</param>
public sealed record TeachingResult(int Kills, int Acknowledged, int Forgotten, int LandedUnsaid, IReadOnlyList<string> Problems);

/// <summary>Starts a process in which clubs are taught, kills it with a signal that it cannot catch, opens the store and compares. One store through all kills.</summary>
public static class TeachingCampaign
{
    private const int LongestLifeMs = 400;

    public static async Task<TeachingResult> RunAsync(string directory, int kills, Random chance, CancellationToken ct)
    {
        var path = Path.Combine(directory, "shed.db");
        var acknowledged = new (int Published, int Forgotten)[Lesson.Clubs];
        var problems = new List<string>();
        var (acts, forgotten, landed, sinceCheck) = (0, 0, 0, 0);
        for (var kill = 0; kill < kills && problems.Count == 0; kill++)
        {
            foreach (var line in await LiveAndDieAsync(path, chance.Next(1, LongestLifeMs), ct))
            {
                acts++;
                forgotten += Note(line, acknowledged) ? 1 : 0;
            }

            // Every second time the next child meets the store as the kill left it.
            sinceCheck++;
            if (kill % 2 == 0)
            {
                landed += await TeachingCheck.RunAsync(path, acknowledged, sinceCheck, $"kill {kill + 1}", problems, ct);
                sinceCheck = 0;
            }
        }

        landed += await TeachingCheck.RunAsync(path, acknowledged, sinceCheck, "end", problems, ct);
        return new TeachingResult(kills, acts, forgotten, landed, problems);
    }

    private static async Task<List<string>> LiveAndDieAsync(string path, int lifeMs, CancellationToken ct)
    {
        using var child = Campaign.Start("teach", path);
        try
        {
            // Life is counted from the first acknowledgement, else a slow start would be all that is ever killed.
            var first = await child.StandardOutput.ReadLineAsync(ct)
                ?? throw new InvalidOperationException($"The teaching process ended by itself: {await child.StandardError.ReadToEndAsync(ct)}");
            var rest = child.StandardOutput.ReadToEndAsync(ct);
            await Task.Delay(lifeMs, ct);
            child.Kill();
            // What comes after the last line feed was cut off by the kill.
            return [first, .. (await rest).Split('\n')[..^1]];
        }
        finally
        {
            child.Kill();
            await child.WaitForExitAsync(CancellationToken.None);
        }
    }

    /// <returns>Whether somebody was forgotten.</returns>
    private static bool Note(string line, (int Published, int Forgotten)[] acknowledged)
    {
        var parts = line.Split(' ');
        var (club, number) = (int.Parse(parts[0], CultureInfo.InvariantCulture), int.Parse(parts[1], CultureInfo.InvariantCulture));
        var (published, forgotten) = acknowledged[club];
        acknowledged[club] = parts[2] switch
        {
            "publish" => (number, forgotten),
            "forget" => (Math.Max(published, number), number),
            _ => (published, forgotten),
        };
        return parts[2] == "forget";
    }
}
