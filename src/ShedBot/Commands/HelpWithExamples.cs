using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using ShedBot.Hearing;
using ShedBot.Practice;
using ShedBot.Reckoning;
using ShedBot.Rules;
using ShedBot.Serving;
using ShedBot.Serving.Copies;
using ShedBot.Serving.Health;
using ShedBot.Simulation;

namespace ShedBot.Commands;

/// <summary>The usual help, followed by examples that can be copied, and by how the command ends.</summary>
internal sealed class HelpWithExamples(HelpAction usual) : SynchronousCommandLineAction
{
    private const string Run = "dotnet run --project src/ShedBot -- ";

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var code = usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        output.WriteLine("Examples:");
        foreach (var (say, type) in Examples(parseResult.CommandResult.Command.Name))
        {
            output.WriteLine($"  # {say}");
            output.WriteLine($"  {type}");
        }

        output.WriteLine();
        output.WriteLine("Ends with 0 when all went well, 1 when what it was given has errors, 2 when the rules are broken,");
        output.WriteLine("3 when the data file cannot be used, 4 when a setting is out of its range. 'serve' also with 5 when the chat refuses us,");
        output.WriteLine("6 when the disk failed under the data file, 7 when something broke; 'health' with 1 when the service is not well.");
        return code;
    }

    private static ImmutableArray<(string Say, string Type)> Examples(string command) => command switch
    {
        PracticeCommand.Name =>
        [
            ("talk a trouble through; type numbers, letters or your own words", Run + "practice"),
            ("the same from a script: one line in, plain text out, always the same at a fixed time",
                "printf 'clutch wont let go\\n1\\nbye\\n' | " + Run + "practice --plain --data data/try.shed --now 2026-05-01T10:00:00Z"),
            ("as another member of the (invented) club", Run + "practice --as Mira"),
        ],
        ServeCommand.Name =>
        [
            ("serve clubs; the file holds the bot's token and nothing else", "SHEDBOT_DISCORD__TOKENFILE=token " + Run + "serve"),
            ("with the data elsewhere", "SHEDBOT_DISCORD__TOKENFILE=token " + Run + "serve --data /srv/shedbot/club.shed"),
        ],
        HealthCommand.Name => [("is the service well?", Run + "health")],
        InviteCommand.Name => [("the link by which a club takes ShedBot in", Run + "invite --app 100000000000000001")],
        BackupCommand.Name => [("copy the data of a stopped service", Run + "backup --data data/club.shed --to club-copy.shed")],
        ForgetCommand.Name => [("somebody who has left the chat and wants to be forgotten", Run + "forget --data data/club.shed --person 80351110224678912")],
        BackupCommand.ExportName => [("all that is kept, as JSON lines", Run + "export --data data/club.shed > club.jsonl")],
        LintCommand.Name =>
        [
            ("look over all rules", Run + "lint knowledge"),
            ("look over one file together with the rest", Run + "lint knowledge my-new-rules.yaml"),
            ("what a code in the report means", Run + "lint --explain R021"),
        ],
        UnderstandCommand.Name =>
            [("what is heard in a message", "echo 'it does not slip, it drags' | " + Run + "understand")],
        ReasonCommand.Name =>
        [
            ("beliefs and costs of a file of models", Run + "reason models.jsonl > answers.jsonl"),
            ("the same through a pipe", "head -3 models.jsonl | " + Run + "reason -"),
        ],
        SimulateCommand.Name =>
        [
            ("how well the coach does on 500 invented riders", Run + "simulate --riders 500 --seed 1"),
            ("the same when one answer in ten is wrong", Run + "simulate --riders 500 --seed 1 --wrong 0.1"),
            ("what each fault is taken for, to mend the rules by", Run + "simulate --riders 700 --confusion"),
        ],
        _ =>
        [
            ("talk a trouble through", "dotnet run --project src/ShedBot"),
            ("more about one command", Run + "practice --help"),
            ("look over the rules", Run + "lint knowledge"),
        ],
    };
}
