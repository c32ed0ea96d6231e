using System.CommandLine;
using System.Globalization;
using ShedBot.Starting;

namespace ShedBot.Serving.Copies;

/// <summary><c>backup</c> and <c>export</c>: copies of a data file that no ShedBot has open.</summary>
internal static class BackupCommand
{
    public const string Name = "backup", ExportName = "export";

    public static Command Create()
    {
        var data = StoppedStore.DataOption();
        var to = new Option<string>("--to") { Description = "The copy; a file that is not there yet.", HelpName = "FILE", Required = true };
        var command = new Command(Name, "Copy a data file and read the copy back from end to end. The service must be stopped; while it runs, it makes backups itself (Serve:BackupFolder).");
        command.Options.Add(data);
        command.Options.Add(to);
        command.SetAction((parse, ct) => Refusals.ToldAsync(() => BackupAsync(parse.GetRequiredValue(data), parse.GetRequiredValue(to), Console.Out, ct), Console.Error));
        return command;
    }

    public static Command CreateExport()
    {
        var data = StoppedStore.DataOption();
        var command = new Command(ExportName, "Write everything in a data file to standard output, a JSON line each document. The service must be stopped; or export a backup.");
        command.Options.Add(data);
        command.SetAction((parse, ct) => Refusals.ToldAsync(
            async () =>
            {
                await using var output = Console.OpenStandardOutput();
                return await ExportAsync(parse.GetRequiredValue(data), output, Console.Error, ct);
            },
            Console.Error));
        return command;
    }

    public static async Task<int> BackupAsync(string data, string to, TextWriter output, CancellationToken ct)
    {
        await using var store = await StoppedStore.OpenAsync(data, ct);
        var report = await store.BackupAsync(to, ct);
        await output.WriteLineAsync($"{to}, read back from end to end: {report}");
        return ExitCodes.Fine;
    }

    public static async Task<int> ExportAsync(string data, Stream output, TextWriter errors, CancellationToken ct)
    {
        await using var store = await StoppedStore.OpenAsync(data, ct);
        var written = await store.ExportAsync(output, ct);
        await errors.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{written} documents."));
        return ExitCodes.Fine;
    }
}
