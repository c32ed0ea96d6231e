using System.Buffers.Binary;
using ShedBot.Coaching.Trials;

namespace ShedBot.Tests.EndToEnd;

/// <summary>A club's own rules from a file, tried at the command line.</summary>
public sealed class TrialProcessTests : IDisposable
{
    private const string About = "about: {covers: an invented club, author: A, source: common practice, date: 2026-05-01}\n";

    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Trial_OfAClubsOwnRules_TellsKeepsAndDrawsIt()
    {
        var (report, picture) = (temp.File("trial.json"), temp.File("trial.png"));
        var (code, output, errors) = await RunAsync(About + "mends:\n  - {of: fault, id: hammer-stuck, key: how common, was: common, now: rare}\n", "--report", report, "--picture", picture);
        Assert.Equal((ExitCodes.Fine, ""), (code, errors));
        Assert.Contains("There are no closed cases yet", output, StringComparison.Ordinal);
        Assert.Contains("4 riders as they come", output, StringComparison.Ordinal);
        Assert.Equal<string>(["hammer-stuck"], TrialReportJson.Read(await File.ReadAllTextAsync(report)).Scope.Faults);
        // Source: ISO/IEC 15948 (PNG), 5.2: how every such file begins.
        Assert.Equal(0x89504E47_0D0A1A0Aul, BinaryPrimitives.ReadUInt64BigEndian(await File.ReadAllBytesAsync(picture)));
    }

    [Fact]
    public async Task Trial_OfWhatDoesNotFit_SaysWhyAndTriesNothing()
    {
        var (code, output, errors) = await RunAsync(About + "retires:\n  - {of: fault, id: no-such-fault, because: x}\n");
        Assert.Equal((ExitCodes.RulesRefused, ""), (code, output));
        Assert.Contains("club.yaml:3", errors, StringComparison.Ordinal);
        Assert.Contains("no-such-fault", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Trial_OfAFileThatIsNotThere_SaysSo()
    {
        var (code, _, errors) = await HostProcess.RunAsync("", "simulate", "trial", temp.File("none.yaml"), "--knowledge", temp.BellRules());
        Assert.Equal(ExitCodes.InputHasErrors, code);
        Assert.Contains("none.yaml", errors, StringComparison.Ordinal);
    }

    private async Task<(int Code, string Output, string Errors)> RunAsync(string layer, params string[] more)
    {
        await File.WriteAllTextAsync(temp.File("club.yaml"), layer);
        return await HostProcess.RunAsync("", ["simulate", "trial", temp.File("club.yaml"), "--knowledge", temp.BellRules(), "--riders", "8", "--stops", "0", .. more]);
    }
}
