using System.Globalization;

namespace ShedBot.Storage.Torture.Learning;

/// <summary>What a campaign of learning found.</summary>
/// <param name="Clubs">Clubs that came to learn.</param>
/// <param name="Cut">By the step that had been told last, how often a kill cut off the one after it.</param>
/// <param name="Problems">What was lost, doubled or torn.</param>
public sealed record LearningResult(int Kills, int Clubs, IReadOnlyDictionary<string, int> Cut, IReadOnlyList<string> Problems);

/// <summary>Starts a process in which clubs learn by themselves, kills it with a signal that it cannot catch, opens the store and compares. One store through all kills.</summary>
public static class LearningCampaign
{
    /// <summary>Of a process that has just begun, and of one that has learnt already and is quick by now.</summary>
    private const int LongestLifeMs = 4000, LongestQuickMs = 1500;

    public static async Task<LearningResult> RunAsync(string directory, int kills, Random chance, CancellationToken ct)
    {
        var path = Path.Combine(directory, "shed.db");
        var (steps, cut, problems) = (new Dictionary<int, LearningStep>(), new Dictionary<string, int>(), new List<string>());
        for (var kill = 0; kill < kills && problems.Count == 0; kill++)
        {
            // Every second one lives until it has learnt for a club: else a slow machine would kill all of them in their first count.
            foreach (var line in await LiveAndDieAsync(path, steps.Keys.DefaultIfEmpty(0).Max(), quick: kill % 2 == 1, chance, ct)) Note(line, steps);
            var last = steps[steps.Keys.Max()].ToString();
            cut[last] = cut.GetValueOrDefault(last) + 1;
            // Every second time the next child meets the store as the kill left it.
            if (kill % 2 == 0) await LearningCheck.RunAsync(path, steps, $"kill {kill + 1}", finish: false, problems, ct);
        }

        await LearningCheck.RunAsync(path, steps, "end", finish: true, problems, ct);
        return new LearningResult(kills, steps.Count, cut, problems);
    }

    private static async Task<List<string>> LiveAndDieAsync(string path, int from, bool quick, Random chance, CancellationToken ct)
    {
        using var child = Campaign.Start("learn", path, from.ToString(CultureInfo.InvariantCulture));
        var lines = new List<string>();
        try
        {
            // Life is counted from the first line, or from the first club that this process has taught from the beginning.
            do
            {
                lines.Add(await child.StandardOutput.ReadLineAsync(ct)
                    ?? throw new InvalidOperationException($"The learning process ended by itself: {await child.StandardError.ReadToEndAsync(ct)}"));
            }
            while (quick && !(Read(lines[^1]) is { Step: LearningStep.Learnt } told && told.Club > from));
            var rest = child.StandardOutput.ReadToEndAsync(ct);
            await Task.Delay(chance.Next(1, quick ? LongestQuickMs : LongestLifeMs), ct);
            child.Kill();
            // What comes after the last line feed was cut off by the kill.
            return [.. lines, .. (await rest).Split('\n')[..^1]];
        }
        finally
        {
            child.Kill();
            await child.WaitForExitAsync(CancellationToken.None);
        }
    }

    private static void Note(string line, Dictionary<int, LearningStep> steps)
    {
        var (club, step) = Read(line);
        // A process that begins again tells earlier steps once more.
        if (step > steps.GetValueOrDefault(club)) steps[club] = step;
    }

    private static (int Club, LearningStep Step) Read(string line)
    {
        var space = line.IndexOf(' ', StringComparison.Ordinal);
        return (int.Parse(line.AsSpan(0, space), CultureInfo.InvariantCulture), Enum.Parse<LearningStep>(line.AsSpan(space + 1)));
    }
}
