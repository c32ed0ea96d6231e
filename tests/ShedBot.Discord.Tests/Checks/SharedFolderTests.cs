using ShedBot.DiscordStandIn.Checks.Contract;

namespace ShedBot.Discord.Tests.Checks;

public sealed class SharedFolderTests : IDisposable
{
    private readonly DirectoryInfo home = Directory.CreateTempSubdirectory();

    public void Dispose() => home.Delete(recursive: true);

    [Fact]
    public void Description_BesideAFolderAbove_IsFound()
    {
        var path = Put("shared");
        var program = home.CreateSubdirectory("project/bin/net10.0").FullName;
        Assert.Equal(path, SharedFolder.Description(program, null));
    }

    [Fact]
    public void Description_NamedFolder_ComesFirst()
    {
        Put("shared");
        var path = Put("elsewhere");
        Assert.Equal(path, SharedFolder.Description(home.FullName, Path.Combine(home.FullName, "elsewhere")));
    }

    [Fact]
    public void Description_NamedFolderWithout_LooksAbove()
    {
        var path = Put("shared");
        Assert.Equal(path, SharedFolder.Description(home.FullName, Path.Combine(home.FullName, "nowhere")));
    }

    [Fact]
    public void Description_Nowhere_IsNull() => Assert.Null(SharedFolder.Description(Path.GetPathRoot(home.FullName)!, home.FullName));

    private string Put(string folder)
    {
        var path = Path.Combine(home.CreateSubdirectory($"{folder}/discord").FullName, "openapi.json");
        File.WriteAllText(path, "{}");
        return path;
    }
}
