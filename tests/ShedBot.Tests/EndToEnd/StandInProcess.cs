using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json;

namespace ShedBot.Tests.EndToEnd;

/// <summary>The stand-in of the chat platform as a process of its own on loopback, with one invented club in it.</summary>
internal sealed class StandInProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly Process process;
    private readonly HttpClient http = new();
    private readonly string address;

    private StandInProcess(Process process, string address, string token) => (this.process, this.address, Token) = (process, address, token);

    public string Token { get; }

    public string Api => address + "/api/v10/";

    public static async Task<StandInProcess> StartAsync()
    {
        // Beside this test's own output: ".../ShedBot.Tests/bin/Debug/net10.0/".
        var here = Path.GetRelativePath(Path.Combine(Repository.Root, "tests", "ShedBot.Tests"), AppContext.BaseDirectory);
        var program = Path.Combine(Repository.Root, "tests", "ShedBot.DiscordStandIn", here, "ShedBot.DiscordStandIn.dll");
        var process = Process.Start(new ProcessStartInfo("dotnet", [program]) { RedirectStandardOutput = true })!;
        var address = await process.StandardOutput.ReadLineAsync().WaitAsync(Patience);
        var token = await process.StandardOutput.ReadLineAsync().WaitAsync(Patience);
        return new StandInProcess(process, address!, token!["token ".Length..]);
    }

    /// <returns>How many bots are connected.</returns>
    public async Task<int> SessionsAsync() =>
        (await http.GetFromJsonAsync<JsonElement>($"{address}/control/world")).GetProperty("sessions").GetInt32();

    public void Dispose()
    {
        http.Dispose();
        if (!process.HasExited) process.Kill();
        process.Dispose();
    }
}
