namespace ShedBot.Storage.Torture.Reminders;

/// <summary>A campaign of reminders from the command line, in a directory of its own.</summary>
internal static class ReminderCommand
{
    public static async Task<int> RunAsync(int kills, int seed)
    {
        var directory = Directory.CreateTempSubdirectory("shedbot-reminders-").FullName;
        var result = await ReminderCampaign.RunAsync(directory, kills, new Random(seed), default);
        Console.WriteLine(
            $"{result.Kills} kills, {result.Acknowledged} reminders acknowledged, {result.Sent} sent, {result.Offered} offered again under the same name, "
            + $"{result.Problems.Count} lost or doubled");
        foreach (var problem in result.Problems.Take(20)) Console.WriteLine($"  {problem}");
        if (result.Problems.Count > 0) Console.WriteLine($"  The store is kept in {directory}");
        else Directory.Delete(directory, recursive: true);
        return result.Problems.Count == 0 ? 0 : 1;
    }
}
