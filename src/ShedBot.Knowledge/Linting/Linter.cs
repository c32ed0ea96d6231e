using System.Collections.Immutable;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>Tells everything that is wrong with rule files, without using them.</summary>
public static class Linter
{
    /// <summary>By file, line and column; empty when all is well. Never throws for what the files hold.</summary>
    public static ImmutableArray<Problem> Run(IReadOnlyList<RuleText> files) => KnowledgeLoader.Load(files).Problems;
}
