using System.CommandLine;
using ShedBot.Rules;
using ShedBot.Starting;

namespace ShedBot.Serving;

/// <summary><c>serve</c>: ShedBot in the chat, until it is asked to stop. The token has no option: what stands on a command line, everybody on the machine can read.</summary>
internal static class ServeCommand
{
    public const string Name = "serve";

    public static Command Create()
    {
        var data = new Option<string?>("--data") { Description = "The data file. Without it: data/club.shed here.", HelpName = "FILE" };
        var rules = RulesFolder.Option();
        var health = new Option<string?>("--health") { Description = "The file that tells how it is. Without it: health.json beside the data file.", HelpName = "FILE" };
        var command = new Command(
            Name,
            "Serve clubs in the chat until asked to stop (Ctrl-C). The bot's token comes from the file named in SHEDBOT_DISCORD__TOKENFILE; deploy/README.md tells all of it.");
        foreach (var option in new Option[] { data, rules, health }) command.Options.Add(option);
        command.SetAction((parse, ct) => Refusals.ToldAsync(
            async () =>
            {
                using var host = ServeHost.Build(SettingSources.Given(
                    ServeSettings.Section,
                    (nameof(ServeSettings.Data), parse.GetValue(data)),
                    (nameof(ServeSettings.Knowledge), parse.GetValue(rules)),
                    (nameof(ServeSettings.Health), parse.GetValue(health))));
                return await ServeHost.RunAsync(host, Console.Error, ct);
            },
            Console.Error));
        return command;
    }
}
