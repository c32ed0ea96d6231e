using ShedBot.Rules;

namespace ShedBot.Tests.Rules;

public sealed class RulesFolderTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Find_FromBelow_WalksUp()
    {
        var rules = temp.BellRules();
        var deep = Directory.CreateDirectory(temp.File("src/deep")).FullName;
        Assert.Equal(rules, RulesFolder.Find(null, deep, AppContext.BaseDirectory));
    }

    [Fact]
    public void Find_NoneAbove_TakesTheOneBesideTheProgram()
    {
        var besides = Directory.CreateDirectory(temp.File("program")).FullName;
        Directory.CreateDirectory(Path.Combine(besides, "knowledge"));
        File.WriteAllText(Path.Combine(besides, "knowledge", "a.yaml"), "about:");
        var elsewhere = Directory.CreateDirectory(temp.File("elsewhere")).FullName;
        Assert.Equal(Path.Combine(besides, "knowledge"), RulesFolder.Find(null, elsewhere, besides));
    }

    [Fact]
    public void Find_AnEmptyFolderOfThatName_IsNotTaken()
    {
        Directory.CreateDirectory(temp.File("knowledge"));
        Assert.Null(RulesFolder.Find(null, temp.Path, temp.Path));
    }

    [Fact]
    public void Find_AskedForOneThatIsNotThere_FindsNone()
    {
        temp.BellRules();
        Assert.Null(RulesFolder.Find(temp.File("other"), temp.Path, temp.Path));
    }
}
