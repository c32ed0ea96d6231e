using System.CommandLine;
using System.Text;
using ShedBot.Knowledge.Understanding;
using ShedBot.Rules;
using ShedBot.Terminal;

namespace ShedBot.Hearing;

/// <summary><c>understand</c>: what is heard in riders' messages, a JSON line each.</summary>
internal static class UnderstandCommand
{
    public const string Name = "understand";

    /// <summary>Characters of a line that are read; well above what the listener takes for too long.</summary>
    private const int MostCharacters = 20_000;

    public static Command Create()
    {
        var rules = RulesFolder.Option();
        var command = new Command(
            Name,
            "What is heard in riders' own words: a message a line on standard input, a JSON line each on standard output. Scores go from 0 to 1.");
        command.Options.Add(rules);
        command.SetAction((parse, ct) => RunAsync(parse.GetValue(rules), ct));
        return command;
    }

    private static async Task<int> RunAsync(string? folder, CancellationToken ct)
    {
        if (RulesFolder.Load(folder, Console.Error) is not { } knowledge) return ExitCodes.RulesRefused;
        using var input = new StreamReader(Console.OpenStandardInput(), Encoding.UTF8);
        await using var output = TextOut.Standard();
        await RunAsync(Listener.For(knowledge), input, output, ct);
        return ExitCodes.Fine;
    }

    public static async Task RunAsync(Listener listener, TextReader input, TextWriter output, CancellationToken ct)
    {
        var lines = new BoundedLines(input, MostCharacters);
        while (await lines.ReadAsync(ct) is { } line)
        {
            await output.WriteLineAsync(HeardJson.Of(line, listener.Understand(line)));
            await output.FlushAsync(ct);
        }
    }
}
