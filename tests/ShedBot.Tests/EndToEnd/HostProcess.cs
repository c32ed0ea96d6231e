using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace ShedBot.Tests.EndToEnd;

/// <summary>The built host as a process of its own, with pipes to it.</summary>
internal sealed class HostProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly Process process;
    private readonly Task<string> errors;

    private HostProcess(Process process)
    {
        this.process = process;
        errors = process.StandardError.ReadToEndAsync();
    }

    public static HostProcess Start(params string[] arguments) => Start(AppContext.BaseDirectory, [], arguments);

    public static HostProcess Start(string here, Dictionary<string, string> environment, params string[] arguments)
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var start = new ProcessStartInfo(Environment.ProcessPath is { } self && Path.GetFileNameWithoutExtension(self) == "dotnet" ? self : "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = utf8,
            StandardOutputEncoding = utf8,
            StandardErrorEncoding = utf8,
            WorkingDirectory = here,
        };
        foreach (var argument in arguments.Prepend(Path.Combine(AppContext.BaseDirectory, "ShedBot.dll"))) start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment) start.Environment[name] = value;
        return new HostProcess(Process.Start(start)!);
    }

    /// <summary>Starts it, types everything, waits for its end.</summary>
    public static async Task<(int Code, string Output, string Errors)> RunAsync(string input, params string[] arguments)
    {
        using var host = Start(arguments);
        await host.TypeAllAsync(input);
        return await host.EndAsync();
    }

    public async Task TypeAsync(string line)
    {
        await process.StandardInput.WriteLineAsync(line);
        await process.StandardInput.FlushAsync();
    }

    public async Task TypeAllAsync(string input)
    {
        try
        {
            await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended before it read everything, as a host that refuses to start does.
        }
    }

    /// <returns>The next line it shows, or null when it has ended.</returns>
    public async Task<string?> ReadAsync() => await process.StandardOutput.ReadLineAsync().WaitAsync(Patience);

    /// <summary>Reads lines until one fits, and returns them all.</summary>
    public async Task<List<string>> ReadUntilAsync(Predicate<string> fits)
    {
        var lines = new List<string>();
        while (lines.Count == 0 || !fits(lines[^1]))
            lines.Add(await ReadAsync() ?? throw new EndOfStreamException($"It ended. Shown: {string.Join('\n', lines)}\nErrors: {await errors}"));
        return lines;
    }

    /// <summary>As a power cut would: no warning, nothing is put away (kill -9).</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync().WaitAsync(Patience);
    }

    /// <summary>As Ctrl-C in its terminal would.</summary>
    public void Interrupt() => Signal("-INT");

    /// <summary>As a supervisor does that wants it to end.</summary>
    public void Terminate() => Signal("-TERM");

    public async Task<(int Code, string Output, string Errors)> EndAsync()
    {
        var output = await process.StandardOutput.ReadToEndAsync().WaitAsync(Patience);
        await process.WaitForExitAsync().WaitAsync(Patience);
        return (process.ExitCode, output, await errors);
    }

    public void Dispose()
    {
        if (!process.HasExited) process.Kill();
        process.Dispose();
    }

    private void Signal(string name)
    {
        using var kill = Process.Start("kill", [name, process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }
}
