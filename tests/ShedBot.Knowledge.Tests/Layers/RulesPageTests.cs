using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Loading;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>The example on the page on rules is a club's file that can be published as it stands.</summary>
public class RulesPageTests
{
    [Fact]
    public void Load_ExampleOfTheRulesPage_FitsTheShippedRules()
    {
        var root = ShippedRulesTests.Root();
        var chapter = File.ReadAllText(Path.Combine(root, "docs", "rules.md")).ReplaceLineEndings("\n").Split("## A club's own layer\n")[1];
        var read = Layer.Read(RuleText.FromText("our-rules.yaml", chapter.Split("```yaml\n")[1].Split("```")[0]));
        Assert.Empty(read.Problems.Select(p => p.ToString()));

        var load = LayeredRules.Load(RuleBase.Of(KnowledgeFolder.Read(Path.Combine(root, "knowledge"))), read.Layer!);

        Assert.Empty(load.Problems.Select(p => p.ToString()));
        Assert.Empty(load.Conflicts.Select(c => c.ToString()));
        Assert.Equal((1, 1, 1), (load.Knowledge!.Faults.Keys.Count(f => f == "grit-under-arm"), read.Layer!.Retires.Length, read.Layer.Mends.Count(m => m.Credit.SaidBy == "Rider C")));
    }
}
