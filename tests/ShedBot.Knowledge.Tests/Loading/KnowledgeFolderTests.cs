using System.Text;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Loading;

public sealed class KnowledgeFolderTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("rules-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Read_FolderWithFoldersInside_GivesYamlInOrderUnderShortNames()
    {
        var rules = Directory.CreateDirectory(Path.Combine(folder, "knowledge", "b")).Parent!.FullName;
        foreach (var name in new[] { "b/a.yaml", "z.yaml", "B.yaml", "readme.md" }) File.WriteAllText(Path.Combine(rules, name), "x");

        Assert.Equal(["knowledge/B.yaml", "knowledge/b/a.yaml", "knowledge/z.yaml"], KnowledgeFolder.Read(rules).Select(f => f.Name));
        Assert.Equal(["knowledge/B.yaml", "knowledge/b/a.yaml", "knowledge/z.yaml"], KnowledgeFolder.Read(rules + "/").Select(f => f.Name));
    }

    [Fact]
    public void Read_NoSuchFolder_Throws() =>
        Assert.ThrowsAny<IOException>(() => KnowledgeFolder.Read(Path.Combine(folder, "nowhere")));

    [Fact]
    public void ReadFile_HugeFile_ReadsNoMoreThanIsNeededToRefuseIt()
    {
        var path = Path.Combine(folder, "huge.yaml");
        using (var huge = File.Create(path)) huge.SetLength(1L << 32);

        var file = KnowledgeFolder.ReadFile(path, "huge.yaml");

        Assert.Equal(TextGate.MaxBytes + 1, file.Bytes.Length);
        Assert.Contains(Linter.Run([file]), p => p.Code == "R001");
    }

    [Fact]
    public void Run_NotUtf8_TellsTheLine()
    {
        byte[] latin = [.. Encoding.UTF8.GetBytes("about:\n  covers: caf"), 0xE9, .. Encoding.UTF8.GetBytes("\n")];

        var problem = Linter.Run([new RuleText("latin.yaml", latin)]).Single(p => p.Code == "R002");

        Assert.Equal(2, problem.Line);
    }

    [Fact]
    public void Load_ByteOrderMarkAndWindowsLineEnds_AreFine()
    {
        byte[] text = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(LampRules.Text.ReplaceLineEndings("\r\n"))];

        Assert.Empty(KnowledgeLoader.Load([new RuleText("lamp.yaml", text)]).Problems.Select(p => p.ToString()));
    }

    [Fact]
    public void Load_NoFileAtAll_IsAProblemAndNoCrash() =>
        Assert.Equal(["R024", "R026", "R026"], KnowledgeLoader.Load([]).Problems.Select(p => p.Code));
}
