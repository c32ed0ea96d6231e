using System.Globalization;
using ShedBot.Reasoning.Exchange;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Reckoning;

/// <summary>Reads models a line at a time and writes an answer a line.</summary>
internal static class ReasonRun
{
    /// <returns>How many lines could not be answered.</returns>
    public static async Task<int> RunAsync(TextReader input, TextWriter output, TextWriter errors, CancellationToken ct)
    {
        var (number, bad) = (0, 0);
        while (await input.ReadLineAsync(ct) is { } line)
        {
            number++;
            if (string.IsNullOrWhiteSpace(line)) continue;
            try
            {
                await output.WriteLineAsync(ReasonAnswer.For(ModelLine.Read(line)).ToJson());
            }
            catch (Exception e) when (e is FormatException or ArgumentException or ImpossibleEvidenceException)
            {
                bad++;
                await errors.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"line {number}: {e.Message}"));
            }
        }

        if (bad > 0) await errors.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{bad} of {number} lines could not be answered."));
        return bad;
    }
}
