namespace ShedBot.Storage.Torture;

/// <summary>A campaign from the command line, in a directory of its own, durable and not.</summary>
internal static class CampaignCommand
{
    public static async Task<int> RunAsync(int kills, int seed)
    {
        var sound = true;
        foreach (var durable in new[] { true, false })
        {
            var directory = Directory.CreateTempSubdirectory("shedbot-torture-").FullName;
            var result = await Campaign.RunAsync(directory, kills, new Random(seed), durable, default);
            Console.WriteLine(
                $"{(durable ? "durable" : "quick")}: {result.Kills} kills, {result.Acknowledged} steps acknowledged, {result.Losses.Count} lost or torn, "
                + $"{result.LandedUnsaid} landed unacknowledged, {result.WithLog} kills with saves in the log");
            foreach (var loss in result.Losses)
            {
                Console.WriteLine($"  {loss}");
            }

            sound &= result.Losses.Count == 0;
            if (result.Losses.Count == 0)
            {
                Directory.Delete(directory, recursive: true);
            }
            else
            {
                Console.WriteLine($"  The store is kept in {directory}");
            }
        }

        return sound ? 0 : 1;
    }
}
