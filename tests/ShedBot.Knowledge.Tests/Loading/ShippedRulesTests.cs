using ShedBot.Knowledge.Loading;
using Xunit.Abstractions;

namespace ShedBot.Knowledge.Tests.Loading;

public class ShippedRulesTests(ITestOutputHelper output)
{
    [Fact]
    public void Knowledge_ShippedRules_HaveNoProblems()
    {
        var folder = Path.Combine(Root(), "knowledge");
        var files = Directory.Exists(folder) ? KnowledgeFolder.Read(folder) : [];
        if (files.IsEmpty)
        {
            output.WriteLine("There are no rule files yet.");
            return;
        }

        var problems = KnowledgeLoader.Load(files).Problems.Select(p => p.ToString()).ToList();

        foreach (var problem in problems) output.WriteLine(problem);
        Assert.True(problems.Count == 0, $"{problems.Count} problems:\n{string.Join('\n', problems)}");
    }

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShedBot.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests run outside the project's folder.");
    }
}
