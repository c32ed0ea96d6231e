namespace ShedBot.Storage.Torture.Teaching;

/// <summary>A campaign of teaching from the command line, in a directory of its own.</summary>
internal static class TeachingCommand
{
    public static async Task<int> RunAsync(int kills, int seed)
    {
        var directory = Directory.CreateTempSubdirectory("shedbot-teaching-").FullName;
        var result = await TeachingCampaign.RunAsync(directory, kills, new Random(seed), default);
        Console.WriteLine(
            $"{result.Kills} kills, {result.Acknowledged} acts acknowledged, {result.Forgotten} of them took somebody out, {result.LandedUnsaid} editions landed unacknowledged, "
            + $"{result.Problems.Count} lost, doubled, torn or with a gap");
        foreach (var problem in result.Problems.Take(20)) Console.WriteLine($"  {problem}");
        if (result.Problems.Count > 0) Console.WriteLine($"  The store is kept in {directory}");
        else Directory.Delete(directory, recursive: true);
        return result.Problems.Count == 0 ? 0 : 1;
    }
}
