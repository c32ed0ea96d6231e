using System.CommandLine;
using System.CommandLine.Help;
using ShedBot.Hearing;
using ShedBot.Practice;
using ShedBot.Reckoning;
using ShedBot.Rules;
using ShedBot.Simulation;

namespace ShedBot.Commands;

/// <summary>The command line. Without a command it is the practice terminal.</summary>
internal static class ShedCommand
{
    public static Task<int> RunAsync(string[] args)
    {
        // With nothing asked for, the most useful thing is a conversation; options alone belong to it as well.
        var asksForHelp = args is ["-h" or "-?" or "--help" or "--version", ..];
        string[] full = args.Length == 0 || (args[0].StartsWith('-') && !asksForHelp) ? [PracticeCommand.Name, .. args] : args;
        // The practice terminal ends on Ctrl-C by itself, after its store is put away; the other commands have nothing to put away.
        return Create().Parse(full).InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
    }

    public static RootCommand Create()
    {
        var root = new RootCommand(
            "ShedBot coaches riders through the clutch troubles of small two-stroke engine kits on bicycles. "
            + "Without a command it starts 'practice': a conversation in this terminal.");
        root.Subcommands.Add(PracticeCommand.Create());
        root.Subcommands.Add(LintCommand.Create());
        root.Subcommands.Add(UnderstandCommand.Create());
        root.Subcommands.Add(ReasonCommand.Create());
        root.Subcommands.Add(SimulateCommand.Create());
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExamples((HelpAction)help.Action!);
        return root;
    }
}
