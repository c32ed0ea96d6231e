using System.Collections.Immutable;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Loading;

/// <summary>What came of reading rule files.</summary>
/// <param name="Knowledge">Null exactly when a problem is an error.</param>
/// <param name="Problems">By file and line.</param>
public sealed record LoadResult(KnowledgeBase? Knowledge, ImmutableArray<Problem> Problems);

/// <summary>Reads, checks and compiles rule files. Pure: the same texts give the same result.</summary>
public static class KnowledgeLoader
{
    /// <summary>Never throws for what the files hold; every problem of every file is told in one go.</summary>
    public static LoadResult Load(IReadOnlyList<RuleText> files, CompileOptions? options = null)
    {
        var problems = new ProblemList();
        var draft = new DraftBuilder();
        var unread = false;
        var inOrder = files.OrderBy(f => f.Name, StringComparer.Ordinal).ToList();
        foreach (var file in inOrder)
        {
            if (TextGate.Read(file, problems) is { } text && YamlTree.Read(file.Name, text, problems) is { } root)
            {
                new ShapeCheck(file.Name, problems).Check(root, AdviceShapes.File, "the file", "");
                draft.Add(file.Name, root);
            }
            else
            {
                unread = true;
            }
        }

        var rules = draft.Build();
        LintRun.All(rules, options ?? CompileOptions.Default, inOrder.Count > 0 ? inOrder[0].Name : "(no file)", allRead: !unread, problems);
        var knowledge = problems.HasErrors ? null : Compiler.Compile(rules, options ?? CompileOptions.Default, RulesVersion.Of(inOrder, options?.Learnt));
        return new LoadResult(knowledge, problems.Sorted());
    }
}
