using ShedBot.Storage;

namespace ShedBot.Tests.EndToEnd;

public sealed class PracticeProcessTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Practice_StoppedInTheMiddleAndStartedAgain_GoesOnThere()
    {
        var (code, before, errors) = await HostProcess.RunAsync("bell makes no sound\nas Mira\nbell sounds flat\nbye\n", Practice());
        Assert.Equal((0, ""), (code, errors));
        var (_, after, _) = await HostProcess.RunAsync("1\nas Mira\nbye\n", [.. Practice(), "--echo"]);
        Assert.StartsWith("Hello Rider. We were here:", after, StringComparison.Ordinal);
        Assert.Contains("Hello Mira. We were here:", after, StringComparison.Ordinal);
        Assert.Contains(before.Split('\n').First(l => l.StartsWith("  [1]", StringComparison.Ordinal)), after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_CtrlC_EndsInOrderAndKeepsWhatWasRepliedTo()
    {
        if (OperatingSystem.IsWindows()) return;
        using (var host = HostProcess.Start(Practice()))
        {
            await host.TypeAsync("bell makes no sound");
            await host.ReadUntilAsync(l => l.StartsWith("  [1]", StringComparison.Ordinal));
            host.Interrupt();
            var (code, _, errors) = await host.EndAsync();
            Assert.Equal((ExitCodes.Fine, ""), (code, errors));
        }

        var (_, after, _) = await HostProcess.RunAsync("bye\n", Practice());
        Assert.StartsWith("Hello Rider. We were here:", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_NoCommand_IsPractice()
    {
        var (code, output, _) = await HostProcess.RunAsync("bye\n", Practice()[1..]);
        Assert.Equal(0, code);
        Assert.StartsWith("Hello Rider", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_BinaryInput_GetsAnAnswerToEachLine()
    {
        using var host = HostProcess.Start([.. Practice(), "--echo"]);
        await host.TypeAllAsync("\0\u0001\u0002\ufffe\n\u001b[31m\n" + new string('é', 100_000) + "\n");
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal((0, ""), (code, errors));
        Assert.Equal(3, output.Split('\n').Count(l => l.StartsWith('>')));
        Assert.DoesNotContain('\u001b', output);
    }

    [Fact]
    public async Task Practice_BrokenRules_RefusesWithTheReportAndTouchesNothing()
    {
        var file = Path.Combine(temp.BellRules(), "bell.yaml");
        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file)).Replace("tells: dome-touch", "tells: dome-tuch", StringComparison.Ordinal));
        var (code, output, errors) = await HostProcess.RunAsync("bye\n", Practice(fresh: false));
        Assert.Equal((ExitCodes.RulesRefused, ""), (code, output));
        Assert.Contains("knowledge/bell.yaml:", errors, StringComparison.Ordinal);
        Assert.Contains("nothing was started", errors, StringComparison.Ordinal);
        Assert.False(File.Exists(temp.File("bell.shed")));
    }

    [Fact]
    public async Task Practice_DataInUse_RefusesAndLeavesItAsItIs()
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = temp.File("bell.shed") }, CancellationToken.None);
        var (code, output, errors) = await HostProcess.RunAsync("bye\n", Practice());
        Assert.Equal((ExitCodes.DataRefused, ""), (code, output));
        Assert.NotEqual("", errors);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_DataIsSomethingElse_RefusesAndLeavesItAsItIs()
    {
        var other = string.Concat(Enumerable.Repeat("not a data file\n", 1000));
        await File.WriteAllTextAsync(temp.File("bell.shed"), other);
        var (code, _, errors) = await HostProcess.RunAsync("bye\n", Practice());
        Assert.Equal(ExitCodes.DataRefused, code);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
        Assert.Equal(other, await File.ReadAllTextAsync(temp.File("bell.shed")));
    }

    [Fact]
    public async Task Practice_SettingOutOfRange_SaysTheLimitAndWhatWasGiven()
    {
        using var host = HostProcess.Start(temp.Path, new() { ["SHEDBOT_PRACTICE__WIDTH"] = "7" }, Practice());
        await host.TypeAllAsync("bye\n");
        var (code, output, errors) = await host.EndAsync();
        Assert.Equal((ExitCodes.SettingRefused, ""), (code, output));
        Assert.Contains("between 40 and 400 columns; 7 was given", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_SettingThatIsNoNumber_SaysWhich()
    {
        using var host = HostProcess.Start(temp.Path, new() { ["SHEDBOT_PRACTICE__WIDTH"] = "wide" }, Practice());
        await host.TypeAllAsync("bye\n");
        var (code, _, errors) = await host.EndAsync();
        Assert.Equal(ExitCodes.SettingRefused, code);
        Assert.Contains("Width", errors, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Practice_SettingsFileThatIsNoJson_SaysWhich()
    {
        await File.WriteAllTextAsync(temp.File("appsettings.json"), "{ not json");
        using var host = HostProcess.Start(temp.Path, [], Practice());
        await host.TypeAllAsync("bye\n");
        var (code, _, errors) = await host.EndAsync();
        Assert.Equal(ExitCodes.SettingRefused, code);
        Assert.Contains("appsettings.json", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_RulesChangedWhileTalking_SaysSoAndGoesOn()
    {
        using var host = HostProcess.Start([.. Practice(), "--echo"]);
        var file = Path.Combine(temp.File("knowledge"), "bell.yaml");
        var good = await File.ReadAllTextAsync(file);
        await host.TypeAsync("bell makes no sound");
        await host.ReadUntilAsync(l => l.StartsWith("  [1]", StringComparison.Ordinal));

        await File.WriteAllTextAsync(file, good.Replace("tells: dome-touch", "tells: dome-tuch", StringComparison.Ordinal));
        await host.TypeAsync("bike");
        await host.ReadUntilAsync(l => l.Contains("the last good ones stay", StringComparison.Ordinal));
        await File.WriteAllTextAsync(file, good.Replace("Is the bell new?", "Is this bell a new one?", StringComparison.Ordinal));
        await host.TypeAsync("bike");
        await host.ReadUntilAsync(l => l.Contains("in use now", StringComparison.Ordinal));
        await host.TypeAllAsync("bye\n");
        Assert.Equal(0, (await host.EndAsync()).Code);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("practice --help")]
    [InlineData("lint --help")]
    [InlineData("understand --help")]
    [InlineData("reason --help")]
    [InlineData("serve --help")]
    [InlineData("health --help")]
    [InlineData("invite --help")]
    [InlineData("backup --help")]
    [InlineData("export --help")]
    public async Task Help_OfEveryCommand_TeachesByExample(string arguments)
    {
        var (code, output, _) = await HostProcess.RunAsync("", arguments.Split(' '));
        Assert.Equal(0, code);
        Assert.Contains("Examples:", output, StringComparison.Ordinal);
        Assert.Contains("dotnet run --project src/ShedBot", output, StringComparison.Ordinal);
    }

    private string[] Practice(bool fresh = true) =>
    [
        "practice", "--plain", "--data", temp.File("bell.shed"), "--now", "2026-05-01T10:00:00Z",
        "--knowledge", fresh ? temp.BellRules() : temp.File("knowledge"),
    ];
}
