using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.Options;
using ShedBot.Storage;

namespace ShedBot.Starting;

/// <summary>What keeps a command from starting, told plainly and turned into an exit code.</summary>
internal static class Refusals
{
    /// <returns>What <paramref name="run"/> returned, or one of <see cref="ExitCodes"/> when it was refused.</returns>
    public static async Task<int> ToldAsync(Func<Task<int>> run, TextWriter errors)
    {
        try
        {
            return await run();
        }
        catch (OptionsValidationException e)
        {
            foreach (var failure in e.Failures) await errors.WriteLineAsync(failure);
            return ExitCodes.SettingRefused;
        }
        catch (SettingRefusedException e)
        {
            await errors.WriteLineAsync(e.Message);
            return ExitCodes.SettingRefused;
        }
        catch (InvalidOperationException e) when (e.InnerException is FormatException or ArgumentException)
        {
            // A setting that is not even a number, such as SHEDBOT_PRACTICE__WIDTH=wide: the message names it.
            await errors.WriteLineAsync(e.Message);
            return ExitCodes.SettingRefused;
        }
        catch (InvalidDataException e)
        {
            await errors.WriteLineAsync($"{e.Message} {What(e.InnerException)}".TrimEnd());
            return ExitCodes.SettingRefused;
        }
        catch (Exception e) when (e is StoreRefusedException or IOException or UnauthorizedAccessException)
        {
            await errors.WriteLineAsync(e.Message);
            return ExitCodes.DataRefused;
        }
    }

    /// <summary>Where a settings file is not JSON; never what stands there, since it may be the token.</summary>
    private static string? What(Exception? inner) => inner?.InnerException is JsonException { LineNumber: { } line }
        ? string.Create(CultureInfo.InvariantCulture, $"It is not JSON: look at line {line + 1}.")
        : inner?.Message;
}
