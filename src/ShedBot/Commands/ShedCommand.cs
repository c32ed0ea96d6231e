using System.CommandLine;
using System.CommandLine.Help;
using ShedBot.Hearing;
using ShedBot.Practice;
using ShedBot.Reckoning;
using ShedBot.Rules;
using ShedBot.Serving;
using ShedBot.Serving.Copies;
using ShedBot.Serving.Health;
using ShedBot.Simulation;
using ShedBot.Starting;

namespace ShedBot.Commands;

/// <summary>The command line. Without a command it is the service where a bot's token is configured, else the practice terminal.</summary>
internal static class ShedCommand
{
    public static Task<int> RunAsync(string[] args)
    {
        if (SecretArguments.Any(args))
        {
            Console.Error.WriteLine(SecretArguments.Advice);
            return Task.FromResult(ExitCodes.InputHasErrors);
        }

        // With nothing asked for, the most useful thing: the service where it can run, else a conversation. Options alone belong to the conversation.
        var asksForHelp = args is ["-h" or "-?" or "--help" or "--version", ..];
        string[] full = args.Length == 0 ? [HasToken() ? ServeCommand.Name : PracticeCommand.Name]
            : args[0].StartsWith('-') && !asksForHelp ? [PracticeCommand.Name, .. args]
            : args;
        // Practice and service end on Ctrl-C by themselves, after their store is put away; the other commands have nothing to put away.
        return Create().Parse(full).InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
    }

    public static RootCommand Create()
    {
        var root = new RootCommand(
            "ShedBot coaches riders through the clutch troubles of small two-stroke engine kits on bicycles. "
            + "Without a command it starts 'practice', a conversation in this terminal; or 'serve', where a bot's token is configured.");
        root.Subcommands.Add(PracticeCommand.Create());
        root.Subcommands.Add(ServeCommand.Create());
        root.Subcommands.Add(HealthCommand.Create());
        root.Subcommands.Add(InviteCommand.Create());
        root.Subcommands.Add(BackupCommand.Create());
        root.Subcommands.Add(BackupCommand.CreateExport());
        root.Subcommands.Add(ForgetCommand.Create());
        root.Subcommands.Add(LintCommand.Create());
        root.Subcommands.Add(UnderstandCommand.Create());
        root.Subcommands.Add(ReasonCommand.Create());
        root.Subcommands.Add(SimulateCommand.Create());
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExamples((HelpAction)help.Action!);
        return root;
    }

    private static bool HasToken()
    {
        try
        {
            return TokenSource.IsConfigured(SettingSources.Read([]));
        }
        catch (InvalidDataException)
        {
            // A settings file that is not JSON: the conversation reads it as well, and tells what is wrong.
            return false;
        }
    }
}
