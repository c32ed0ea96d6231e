using System.CommandLine;
using ShedBot.Terminal;

namespace ShedBot.Reckoning;

/// <summary><c>reason FILE</c>: beliefs and expected costs for a file of models, a JSON line each.</summary>
internal static class ReasonCommand
{
    public const string Name = "reason";

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "Models, one JSON object a line; - reads them from standard input." };
        var command = new Command(
            Name,
            "Beliefs and exact expected costs for a file of models, a JSON line each; lines that cannot be read go to standard error.");
        command.Arguments.Add(file);
        command.SetAction((parse, ct) => RunAsync(parse.GetRequiredValue(file), ct));
        return command;
    }

    private static async Task<int> RunAsync(string file, CancellationToken ct)
    {
        try
        {
            using var input = file == "-" ? new StreamReader(Console.OpenStandardInput()) : new StreamReader(file);
            await using var output = TextOut.Standard();
            return await ReasonRun.RunAsync(input, output, Console.Error, ct) == 0 ? ExitCodes.Fine : ExitCodes.InputHasErrors;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{file}: {e.Message}");
            return ExitCodes.InputHasErrors;
        }
    }
}
