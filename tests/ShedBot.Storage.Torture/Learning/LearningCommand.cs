namespace ShedBot.Storage.Torture.Learning;

/// <summary>A campaign of learning from the command line, in a directory of its own.</summary>
internal static class LearningCommand
{
    public static async Task<int> RunAsync(int kills, int seed)
    {
        var directory = Directory.CreateTempSubdirectory("shedbot-learning-").FullName;
        var result = await LearningCampaign.RunAsync(directory, kills, new Random(seed), default);
        Console.WriteLine($"{result.Kills} kills, {result.Clubs} clubs, {result.Problems.Count} lost, doubled or torn");
        foreach (var (step, times) in result.Cut.OrderBy(c => c.Key, StringComparer.Ordinal)) Console.WriteLine($"  after {step}: {times}");
        foreach (var problem in result.Problems.Take(20)) Console.WriteLine($"  {problem}");
        if (result.Problems.Count > 0) Console.WriteLine($"  The store is kept in {directory}");
        else Directory.Delete(directory, recursive: true);
        return result.Problems.Count == 0 ? 0 : 1;
    }
}
