using System.CommandLine;
using ShedBot.Discord.Running;
using ShedBot.Starting;

namespace ShedBot.Serving;

/// <summary><c>invite</c>: the link by which a club takes ShedBot in.</summary>
internal static class InviteCommand
{
    public const string Name = "invite";

    public static Command Create()
    {
        var app = new Option<string>("--app") { Description = "The application's id, from the platform's page for developers.", HelpName = "ID", Required = true };
        var command = new Command(Name, "Print the link by which a club takes ShedBot in, and what it asks to be allowed there, with the reason.");
        command.Options.Add(app);
        command.SetAction((parse, _) => Refusals.ToldAsync(() => Task.FromResult(Run(parse.GetRequiredValue(app), Console.Out)), Console.Error));
        return command;
    }

    public static int Run(string application, TextWriter output)
    {
        try
        {
            var link = DiscordClubs.InviteLink(application.Trim());
            output.WriteLine(link);
            output.WriteLine();
            output.WriteLine("Whoever may manage a club's server opens it and chooses the club. It asks to be allowed:");
            foreach (var (name, why) in AskedRights.Of(link)) output.WriteLine($"  {name}: {why}");
            output.WriteLine("Nothing else: no managing, no reading of what is not meant for it.");
            return ExitCodes.Fine;
        }
        catch (FormatException e)
        {
            throw new SettingRefusedException(e.Message);
        }
    }
}
