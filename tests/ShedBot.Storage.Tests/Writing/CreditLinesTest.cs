using System.Collections.Immutable;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage.Tests.Writing;

/// <summary>A name goes out of the credit of a rule, and nothing else changes.</summary>
public sealed class CreditLinesTest
{
    [Theory]
    // Single and double quotes as YAML 1.2.2 has them: chapters 7.3.2 and 7.3.1.
    [InlineData("author: Wren", "author: somebody who has left")]
    [InlineData("    said by: Wren\n    source: common practice", "    said by: somebody who has left\n    source: common practice")]
    [InlineData("  - author: Wren\n", "  - author: somebody who has left\n")]
    [InlineData("author: 'Wren'\n", "author: somebody who has left\n")]
    [InlineData("author: \"Wr\\u0065n\"", "author: somebody who has left")]
    [InlineData("author: \"Wr\\x65n\"\r\n", "author: somebody who has left\r\n")]
    [InlineData("author: Wrennet", null)]
    [InlineData("author: wren", null)]
    [InlineData("authors: Wren", null)]
    [InlineData("asks: who is author: Wren", null)]
    [InlineData("- Wren", null)]
    [InlineData("drawing: |-\n  author: Wren\n\n  said by: Wren\nsource: x", null)]
    [InlineData("- |\n  author: Wren\n", null)]
    [InlineData("- drawing: |\n    author: Wren\n  author: Wren\n", "- drawing: |\n    author: Wren\n  author: somebody who has left\n")]
    [InlineData("a: |2\n   x\nauthor: Wren", "a: |2\n   x\nauthor: somebody who has left")]
    [InlineData("", null)]
    public void Without_Line_ChangesCreditsOnly(string text, string? after) => Assert.Equal(after ?? text, CreditLines.Without(text, Names("Wren")));

    [Theory]
    [InlineData("O'Neill")]
    [InlineData("\"quoted\"")]
    [InlineData("wren: the second")]
    [InlineData("# wren")]
    [InlineData("🚲 wheel")]
    [InlineData("שלום")]
    [InlineData("- dash")]
    [InlineData("yes")]
    [InlineData("back\\slash")]
    [InlineData("e\u0301 combined")]
    public void Without_LayerAsItIsWritten_LosesTheNameAndStillReads(string name)
    {
        var layer = LayerOf(name).Write();

        var after = CreditLines.Without(layer, Names(name));

        var read = Layer.Read(RuleText.FromText(Layer.DefaultFile, after));
        Assert.NotNull(read.Layer);
        Assert.Equal(after, read.Layer.Write());
        Assert.Equal(LayerOf(CreditLines.Nobody).Write(), after);
    }

    private static Layer LayerOf(string name)
    {
        var credit = new Credit("Heron", name, Credit.CommonPractice, new DateOnly(2026, 5, 2));
        var made = Layer.Empty.Apply(
        [
            new Retire(new RuleKey(RuleKind.Fault, "lost-ball"), "We have none.", credit),
            new MendList(new RuleKey(RuleKind.Complaint, "drags"), RulePath.Of("riders say"), "it drags", null, credit with { Author = name, SaidBy = null }),
        ]);
        return made.Layer ?? throw new InvalidOperationException(string.Join(' ', made.Problems));
    }

    private static ImmutableHashSet<string> Names(string name) => [name];
}
