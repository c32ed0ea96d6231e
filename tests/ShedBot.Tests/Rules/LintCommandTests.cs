using ShedBot.Rules;

namespace ShedBot.Tests.Rules;

public sealed class LintCommandTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly StringWriter output = new() { NewLine = "\n" }, errors = new() { NewLine = "\n" };

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Run_GoodRules_SaysSoAndEndsFine()
    {
        Assert.Equal(0, LintCommand.Run([temp.BellRules()], output, errors));
        Assert.Equal(
            "1 file, no problems.\n2 complaints, 2 findings, 1 fact, 3 faults, 2 checks, 0 covers, 3 repairs, 0 service tasks, 0 how-tos, 1 emergency.\n",
            output.ToString());
    }

    [Fact]
    public void Run_TwoMistakes_TellsBothWithFileAndLine()
    {
        var folder = temp.BellRules();
        Break(folder, "dome-touch: {cable:", "dome-tuch: {cable:");
        Break(folder, "mends: {hammer-lost:", "mends: {hammer-gone:");
        Assert.Equal(1, LintCommand.Run([folder], output, errors));
        var lines = output.ToString().Split('\n');
        Assert.Contains(lines, l => l.StartsWith("knowledge/bell.yaml:63:", StringComparison.Ordinal) && l.Contains("error", StringComparison.Ordinal) && l.Contains("dome-tuch", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("hammer-gone", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("1 file, ", StringComparison.Ordinal) && l.Contains("error", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("service task", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_NoSuchFile_SaysSo()
    {
        Assert.Equal(1, LintCommand.Run([temp.File("none.yaml")], output, errors));
        Assert.Contains("none.yaml", errors.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_FolderWithoutRules_SaysSo()
    {
        Assert.Equal(1, LintCommand.Run([temp.Path], output, errors));
        Assert.Contains("no rule files", errors.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("R001")]
    [InlineData("r001")]
    public void Explain_ACode_TellsWhy(string code)
    {
        Assert.Equal(0, LintCommand.Explain(code, output, errors));
        Assert.StartsWith("R001 (error): ", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Explain_NoSuchCode_TellsTheRange()
    {
        Assert.Equal(1, LintCommand.Explain("X9", output, errors));
        Assert.Contains("R001", errors.ToString(), StringComparison.Ordinal);
    }

    private static void Break(string folder, string piece, string instead)
    {
        var file = Path.Combine(folder, "bell.yaml");
        var text = File.ReadAllText(file);
        Assert.Contains(piece, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(piece, instead, StringComparison.Ordinal));
    }
}
