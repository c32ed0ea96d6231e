using System.CommandLine;
using Microsoft.Extensions.Configuration;
using ShedBot.Starting;

namespace ShedBot.Serving.Health;

/// <summary><c>health</c>: for container health checks and the like.</summary>
internal static class HealthCommand
{
    public const string Name = "health";

    public static Command Create()
    {
        var file = new Option<string?>("--file") { Description = "The report to read. Without it: the one of the settings, as 'serve' finds it.", HelpName = "FILE" };
        var command = new Command(Name, "Say in one line whether the running service is well: ends with 0 if so, else with 1.");
        command.Options.Add(file);
        command.SetAction((parse, _) => Refusals.ToldAsync(
            () => Task.FromResult(Run(SettingSources.Given(ServeSettings.Section, (nameof(ServeSettings.Health), parse.GetValue(file))), TimeProvider.System, Console.Out)),
            Console.Error));
        return command;
    }

    public static int Run(IEnumerable<KeyValuePair<string, string?>> given, TimeProvider clock, TextWriter output)
    {
        var settings = SettingSources.Read(given).GetSection(ServeSettings.Section).Get<ServeSettings>() ?? new ServeSettings();
        var verdict = Verdict.Of(new HealthFile(settings.HealthPath).Read(), settings.HealthPath, clock.GetUtcNow());
        output.WriteLine(verdict.Line);
        return verdict.Well ? ExitCodes.Fine : ExitCodes.NotWell;
    }
}
