using System.CommandLine;
using ShedBot.Storage;

namespace ShedBot.Serving.Copies;

/// <summary>The data file of a service that is stopped, for commands of the operator.</summary>
internal static class StoppedStore
{
    public static Option<string> DataOption() => new("--data") { Description = "The data file.", HelpName = "FILE", Required = true };

    /// <summary>Opening would make a file that is missing; that is never what was asked for.</summary>
    /// <exception cref="FileNotFoundException">There is none.</exception>
    /// <exception cref="StoreRefusedException">It cannot be used, or another ShedBot has it open.</exception>
    public static Task<LiteShedStore> OpenAsync(string data, CancellationToken ct) => File.Exists(data)
        ? LiteShedStore.OpenAsync(new StoreOptions { Path = data }, ct)
        : throw new FileNotFoundException($"There is no data file {data}.");
}
