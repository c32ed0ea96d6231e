using System.Globalization;
using ShedBot.Discord.Torture;

return args switch
{
    ["live", var folder, var api, var token, var guild, var day, .. var people] => await Life.RunAsync(folder, api, token, guild, Number(day), people),
    ["reminders", var kills, var seed] => await RemindersAsync(Number(kills), Number(seed)),
    _ => Help(),
};

static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

static async Task<int> RemindersAsync(int kills, int seed)
{
    var folder = Directory.CreateTempSubdirectory("shedbot-kills-").FullName;
    try
    {
        var result = await KillCampaign.RunAsync(folder, kills, new Random(seed), default);
        Console.WriteLine($"{result.Kills} kills, {result.Days} evenings, {result.Reminders} reminders, {result.Presses} presses, {result.Problems.Count} lost or doubled");
        foreach (var problem in result.Problems) Console.WriteLine(problem);
        return result.Problems.Count == 0 ? 0 : 1;
    }
    finally
    {
        Directory.Delete(folder, recursive: true);
    }
}

static int Help()
{
    Console.WriteLine("""
        Kills ShedBot in an invented club again and again and looks whether a reminder was lost or doubled.
          reminders KILLS SEED    for example: reminders 200 1
          live ...                lives in the club until it is killed (started by reminders)
        """);
    return 2;
}
