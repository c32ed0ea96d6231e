using System.Globalization;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Checks;

// Runs the stand-in by itself for clients and scripts of other languages: the first line printed is its address.
var at = Array.IndexOf(args, "--port");
var standIn = await StandIn.StartAsync(new StandInOptions
{
    Port = at >= 0 && at + 1 < args.Length ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : 0,
    AllowedPrivilegedIntents = args.Contains("--allow-privileged") ? 32768 | 2 | 256 : 0,
    BucketLimit = args.Contains("--no-limits") ? int.MaxValue : 100,
    KeepLog = !args.Contains("--no-log"),
    Checks = args.Contains("--lenient") ? [new LimitsCheck(Strictness.Lenient), ContractCheck.Find(Strictness.Lenient)] : [],
});
await using (standIn.ConfigureAwait(false))
{
    var club = await standIn.AddGuildAsync("Invented riders of nowhere");
    standIn.AddTextChannel(club, "workshop");
    standIn.AddForum(club, "troubles", "engine", "wheels");
    standIn.Join(club, standIn.AddPerson("invented-ann"));
    standIn.Join(club, standIn.AddPerson("invented-ben"));
    Console.WriteLine(standIn.Address);
    Console.WriteLine($"token {standIn.Options.Token}");
    await standIn.UntilStoppedAsync();
}
