using System.CommandLine;
using ShedBot.Rules;
using ShedBot.Starting;

namespace ShedBot.Practice;

/// <summary><c>practice</c>: talk a trouble through in the terminal.</summary>
internal static class PracticeCommand
{
    public const string Name = "practice";

    public static Command Create()
    {
        var plain = new Option<bool>("--plain") { Description = "One line in, plain text out: for pipes and scripts. Also taken when the output is not a terminal." };
        var echo = new Option<bool>("--echo") { Description = "With --plain: repeat each line that comes in after '> ', so that the output reads as the whole conversation." };
        var member = new Option<string?>("--as") { Description = "The member who talks first; 'as NAME' changes it later.", HelpName = "NAME" };
        var data = new Option<string?>("--data") { Description = "The data file. Without it: data/practice.shed here.", HelpName = "FILE" };
        var rules = RulesFolder.Option();
        var now = new Option<string?>("--now")
        {
            Description = "Let the clock stand still at this time, such as 2026-05-01T18:00 (UTC), until 'skip' moves it: the same lines then give the same words.",
            HelpName = "TIME",
        };
        var command = new Command(
            Name,
            "Talk a trouble through in this terminal, by numbers, letters or your own words. Everything is kept: stop and go on when you like.");
        foreach (var option in new Option[] { plain, echo, member, data, rules, now }) command.Options.Add(option);
        command.SetAction((parse, ct) => Refusals.ToldAsync(
            async () =>
            {
                using var host = PracticeHost.Build(SettingSources.Given(
                    PracticeSettings.Section,
                    (nameof(PracticeSettings.Plain), parse.GetValue(plain) ? bool.TrueString : null),
                    (nameof(PracticeSettings.Echo), parse.GetValue(echo) ? bool.TrueString : null),
                    (nameof(PracticeSettings.As), parse.GetValue(member)),
                    (nameof(PracticeSettings.Data), parse.GetValue(data)),
                    (nameof(PracticeSettings.Knowledge), parse.GetValue(rules)),
                    (nameof(PracticeSettings.Now), parse.GetValue(now))));
                return await PracticeHost.RunAsync(host, ct);
            },
            Console.Error));
        return command;
    }
}
