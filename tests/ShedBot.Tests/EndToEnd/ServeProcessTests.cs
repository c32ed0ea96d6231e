using System.Diagnostics;
using ShedBot.Serving.Health;
using ShedBot.Tests.Serving;

namespace ShedBot.Tests.EndToEnd;

/// <summary>The service as an operator starts it, with the stand-in for the chat.</summary>
public sealed class ServeProcessTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Serve_WithATokenConfigured_NeedsNoCommandConnectsAndEndsOnTerm()
    {
        if (OperatingSystem.IsWindows()) return;
        using var chat = await StandInProcess.StartAsync();
        using var host = Start(chat.Api, chat.Token);
        var report = await WaitUntilAsync(r => r.Ready);
        Assert.Equal(1, await chat.SessionsAsync());
        Assert.True(report.Totals["shedbot.rest.requests"] >= 1);
        Assert.Equal(0, (await HealthAsync()).Code);

        var began = Stopwatch.GetTimestamp();
        host.Terminate();
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal((ExitCodes.Fine, ""), (code, errors));
        Assert.True(Stopwatch.GetElapsedTime(began) < TimeSpan.FromSeconds(9), "It took too long to stop.");
        Assert.Contains("Stopped", output, StringComparison.Ordinal);
        Assert.Equal(0, await chat.SessionsAsync());
        Assert.Equal(ExitCodes.NotWell, (await HealthAsync()).Code);
        AssertNowhere(chat.Token, output + errors);
    }

    /// <summary>The stand-in answers 401 to a token that it does not know, as the platform does.</summary>
    [Fact]
    public async Task Serve_TokenThatTheChatDoesNotTake_EndsWithAdviceAndWithoutShowingIt()
    {
        using var chat = await StandInProcess.StartAsync();
        using var host = Start(chat.Api, Secret.Token, "SHEDBOT_LOGGING__LOGLEVEL__DEFAULT=Trace");
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal(ExitCodes.ChatRefused, code);
        Assert.Contains("does not take the bot's token", errors, StringComparison.Ordinal);
        AssertNowhere(Secret.Token, output + errors);
        Secret.AssertNotIn(output + errors);
    }

    [Fact]
    public async Task Serve_ChatThatCannotBeReached_KeepsTryingAndEndsOnTerm()
    {
        if (OperatingSystem.IsWindows()) return;
        // Port 1 of this machine, where nothing listens.
        using var host = Start("http://127.0.0.1:1/api/v10/", Secret.Token, "SHEDBOT_LOGGING__LOGLEVEL__DEFAULT=Trace");
        Assert.False((await WaitUntilAsync(_ => true)).Ready);
        host.Terminate();
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal((ExitCodes.Fine, ""), (code, errors));
        AssertNowhere(Secret.Token, output + errors);
    }

    [Fact]
    public async Task Serve_NoToken_SaysWhereToPutOne()
    {
        var (code, _, errors) = await HostProcess.RunAsync("", "serve", "--data", temp.File("club.shed"));
        Assert.Equal(ExitCodes.SettingRefused, code);
        Assert.Contains("SHEDBOT_DISCORD__TOKENFILE", errors, StringComparison.Ordinal);
        Assert.False(File.Exists(temp.File("club.shed")));
    }

    /// <summary>The token stands unquoted in the settings file: where it is not JSON is told, not what stands there.</summary>
    [Theory]
    [InlineData("{ \"Discord\": { \"Token\": " + Secret.Token + " } }")]
    [InlineData("{ \"Discord\": { \"Token\":\n t" + Secret.Token + " } }")]
    [InlineData("{ \"Discord\": { \"Token\": \"" + Secret.Token + "\", \"Shards\": \"many\" } }")]
    public async Task Serve_BrokenSettingsFile_DoesNotShowTheToken(string settings)
    {
        await File.WriteAllTextAsync(temp.File("appsettings.json"), settings);
        using var host = HostProcess.Start(temp.Path, [], "serve", "--data", temp.File("club.shed"));
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal(ExitCodes.SettingRefused, code);
        Assert.NotEqual("", errors);
        Secret.AssertNotIn(output + errors);
    }

    private HostProcess Start(string api, string token, params string[] more)
    {
        File.WriteAllText(temp.File("token"), token);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(temp.File("token"), UnixFileMode.UserRead);
        var environment = new Dictionary<string, string>
        {
            ["SHEDBOT_DISCORD__TOKENFILE"] = temp.File("token"),
            ["SHEDBOT_DISCORD__API"] = api,
            ["SHEDBOT_SERVE__DATA"] = temp.File("club.shed"),
            ["SHEDBOT_SERVE__KNOWLEDGE"] = temp.BellRules(),
        };
        foreach (var setting in more.Select(m => m.Split('=', 2))) environment[setting[0]] = setting[1];
        return HostProcess.Start(temp.Path, environment);
    }

    private async Task<HealthReport> WaitUntilAsync(Predicate<HealthReport> fits)
    {
        for (var began = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(began) < TimeSpan.FromSeconds(60); await Task.Delay(200))
            if (new HealthFile(temp.File("health.json")).Read() is { } report && fits(report)) return report;
        throw new TimeoutException("The report did not become what it should.");
    }

    private Task<(int Code, string Output, string Errors)> HealthAsync() => HostProcess.RunAsync("", "health", "--file", temp.File("health.json"));

    /// <summary>Neither said nor written into any file that the service made.</summary>
    private void AssertNowhere(string token, string said)
    {
        Assert.DoesNotContain(token, said, StringComparison.Ordinal);
        var written = Directory.EnumerateFiles(temp.Path, "*", SearchOption.AllDirectories).Where(f => f != temp.File("token")).ToList();
        Assert.Contains(temp.File("club.shed"), written);
        Assert.All(written, f => Assert.False(File.ReadAllBytes(f).AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(token)) >= 0, f));
    }
}
