using System.Text;
using System.Text.Json;
using ShedBot.Serving.Copies;
using ShedBot.Storage;
using ShedBot.Tests.Practice;

namespace ShedBot.Tests.Serving.Copies;

/// <summary>The walk of deploy/README.md: talk, back up, lose the file, put the backup in its place, go on.</summary>
public sealed class BackupCommandTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Backup_PutInPlaceOfALostFile_TheConversationGoesOn()
    {
        var (data, copy, rules) = (temp.File("club.shed"), temp.File("copy.shed"), temp.BellRules());
        await Sitting.AtAsync(data, rules, ["bell makes no sound"]);
        var output = new StringWriter();
        Assert.Equal(ExitCodes.Fine, await BackupCommand.BackupAsync(data, copy, output, default));
        Assert.Contains("sound", output.ToString(), StringComparison.Ordinal);

        File.Delete(data);
        File.Copy(copy, data);
        Assert.StartsWith("Hello Rider. We were here:", await Sitting.AtAsync(data, rules, ["bye"]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_WhileTheServiceRuns_IsRefusedWithWhatToDo()
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = temp.File("club.shed") }, default);
        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(() => BackupCommand.BackupAsync(temp.File("club.shed"), temp.File("copy.shed"), TextWriter.Null, default));
        Assert.Contains("Stop that one first", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_OfNothing_IsRefusedAndMakesNothing()
    {
        await Assert.ThrowsAsync<FileNotFoundException>(() => BackupCommand.BackupAsync(temp.File("club.shed"), temp.File("copy.shed"), TextWriter.Null, default));
        Assert.Empty(Directory.EnumerateFiles(temp.Path));
    }

    [Fact]
    public async Task Export_OfWhatWasSaid_IsALineOfJsonEach()
    {
        var data = temp.File("club.shed");
        await Sitting.AtAsync(data, temp.BellRules(), ["bell makes no sound"]);
        using var output = new MemoryStream();
        Assert.Equal(ExitCodes.Fine, await BackupCommand.ExportAsync(data, output, TextWriter.Null, default));
        var lines = Encoding.UTF8.GetString(output.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(lines, l => JsonDocument.Parse(l).RootElement.GetProperty("in").GetString() == "cases" && l.Contains("bell makes no sound", StringComparison.Ordinal));
    }
}
